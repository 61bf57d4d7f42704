package app.restwater.android

import android.content.Context
import android.os.Build

/**
 * The question whether the app may notify, which newer phones put once: until it is answered nothing was refused. It is put once
 * more if what was allowed is taken back.
 */
internal object Question {
    /** The file of preferences that says what was asked on this phone; it stays on it. */
    private const val FILE = "asked"
    private const val ASKED = "notifications"
    private const val ANSWERED = "notifications-answered"

    private fun kept(context: Context) = context.getSharedPreferences(FILE, Context.MODE_PRIVATE)

    fun isAsked(context: Context) = kept(context).getBoolean(ASKED, false)

    fun asked(context: Context) = kept(context).edit().putBoolean(ASKED, true).remove(ANSWERED).apply()

    /** It is allowed: if the system takes that back after months, or the angler does, it is asked for once more. */
    fun granted(context: Context) {
        if (isAsked(context)) kept(context).edit().remove(ASKED).apply()
    }

    fun answered(context: Context) = kept(context).edit().putBoolean(ANSWERED, true).apply()

    /** The app was started again: its question was closed with the window, and it is not asked again. */
    fun isNoLongerOpen(context: Context) {
        if (isAsked(context)) answered(context)
    }

    fun isAnswered(context: Context) = Build.VERSION.SDK_INT < Build.VERSION_CODES.TIRAMISU || kept(context).getBoolean(ANSWERED, false)
}
