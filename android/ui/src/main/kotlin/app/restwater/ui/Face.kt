package app.restwater.ui

import androidx.compose.ui.text.font.FontFamily

/** The app's typeface (`core/face/res/font`): a shell sets its cuts before the first screen is drawn. */
object Face {
    /** The letters of words, medium and bold. */
    var words: FontFamily = FontFamily.SansSerif
        private set

    /** The digits of the clock, the widest cut first: the widest that fits is used, and none is stretched. */
    var clocks: List<FontFamily> = listOf(FontFamily.SansSerif)
        private set

    fun wear(words: FontFamily, clocks: List<FontFamily>) {
        this.words = words
        this.clocks = clocks
    }
}
