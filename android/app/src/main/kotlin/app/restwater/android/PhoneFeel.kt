package app.restwater.android

import android.os.Build
import android.view.HapticFeedbackConstants
import android.view.View
import app.restwater.ui.Feel

/**
 * One pulse for a tap that was logged and a different one for a tap that was not, if the phone's touch settings allow.
 */
internal class PhoneFeel : Feel {
    /** The window in the foreground, if there is one. */
    var view: View? = null

    override fun accepted() = pulse(if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) HapticFeedbackConstants.CONFIRM else HapticFeedbackConstants.VIRTUAL_KEY)

    override fun refused() = pulse(if (Build.VERSION.SDK_INT >= Build.VERSION_CODES.R) HapticFeedbackConstants.REJECT else HapticFeedbackConstants.LONG_PRESS)

    private fun pulse(kind: Int) {
        view?.performHapticFeedback(kind)
    }
}
