package app.restwater.android

import android.view.MotionEvent

/**
 * A contact wider than a fingertip is, as a palm or a wet sleeve makes: from then on until everything has left the
 * glass nothing counts as a tap. Where the glass does not measure contacts they are nought wide and all count.
 */
class Palm(private val widestPx: Double) {
    private var lies = false

    /** Hands a touch on, unless it belongs to a palm; what was under way when the palm came down is called off. */
    fun filter(event: MotionEvent, handOn: (MotionEvent) -> Boolean): Boolean {
        val lay = lies
        if (event.actionMasked == MotionEvent.ACTION_DOWN) lies = false
        if ((0 until event.pointerCount).any { event.getTouchMajor(it) > widestPx }) lies = true
        if (!lies) return handOn(event)
        if (!lay && event.actionMasked != MotionEvent.ACTION_DOWN) {
            val off = MotionEvent.obtain(event).apply { action = MotionEvent.ACTION_CANCEL }
            handOn(off)
            off.recycle()
        }
        return true
    }
}
