package app.restwater.android

import android.view.MotionEvent

/**
 * Ignores palms and wet sleeves: once a contact is wider than a fingertip, nothing counts as a tap until everything has
 * left the screen, and [onRejected] is called once. A screen that does not measure contacts reports a width of 0, so all of them count.
 */
class Palm(private val widestPx: Double, private val onRejected: () -> Unit) {
    private var isDown = false

    /** Passes a touch on unless it belongs to a palm; a touch in progress when the palm comes down is cancelled. */
    fun filter(event: MotionEvent, handOn: (MotionEvent) -> Boolean): Boolean {
        val wasDown = isDown
        if (event.actionMasked == MotionEvent.ACTION_DOWN) isDown = false
        val thumb = !isDown
        if ((0 until event.pointerCount).any { event.getTouchMajor(it) > widestPx }) isDown = true
        if (isDown && thumb) onRejected()
        if (!isDown) return handOn(event)
        if (!wasDown && event.actionMasked != MotionEvent.ACTION_DOWN) {
            val off = MotionEvent.obtain(event).apply { action = MotionEvent.ACTION_CANCEL }
            handOn(off)
            off.recycle()
        }
        return true
    }
}
