package app.restwater.ui

import androidx.compose.runtime.getValue
import androidx.compose.runtime.mutableStateMapOf
import androidx.compose.runtime.mutableStateOf
import androidx.compose.runtime.setValue
import androidx.compose.runtime.staticCompositionLocalOf

/** Texts that are typed and not sent yet, each with the place that it would go to: a text comes back only there. */
class Drafts {
    /** By place; the latest last. */
    private var texts by mutableStateOf(emptyList<Pair<String, String>>())

    /** What a text typed on a screen would be about, as the core last gave it. */
    private val abouts = mutableStateMapOf<Showing, String>()

    fun about(on: Showing, about: String) {
        abouts[on] = about
    }

    /** The place of a line on a screen. */
    fun place(on: Showing, tag: String) = "${on.name} $tag ${abouts[on].orEmpty()}"

    operator fun get(place: String): String = texts.find { it.first == place }?.second.orEmpty()

    /** Called after each letter, and when a text is gone because it was sent or wiped out. */
    var onChanged: () -> Unit = {}

    /** An empty text is removed. */
    operator fun set(place: String, text: String) {
        val others = texts.filter { it.first != place }
        texts = if (text.isEmpty()) others else (others + (place to text)).takeLast(MOST)
        onChanged()
    }

    /** All of them, for the shell to keep. */
    fun kept(): List<String> = texts.flatMap { listOf(it.first, it.second) }

    /** Those that an earlier process [kept]. */
    fun again(kept: List<String>) {
        texts = kept.chunked(2).filter { it.size == 2 }.map { it[0] to it[1] }
    }

    private companion object {
        /** More than anybody leaves half typed. */
        const val MOST = 20
    }
}

/** The texts of the app, and the open screen. */
internal val LocalDrafts = staticCompositionLocalOf<Pair<Drafts, () -> Showing>?> { null }
