package app.restwater.android

import android.content.Context
import app.restwater.ui.Drafts
import org.json.JSONArray
import org.json.JSONException

/**
 * What is half typed, in a file of its own: the launcher's START, a swipe from the recent apps, a restart and, up to Android 11,
 * BACK on the Bank end an activity without anything that the system would keep. All screens of the process have the same texts.
 */
internal class KeptDrafts(context: Context) {
    private val store = context.getSharedPreferences(FILE, Context.MODE_PRIVATE)

    val drafts: Drafts = Drafts().apply {
        again(read())
        // What was sent must not come back, however the process ends, and a battery that dies in the cold stops no activity first.
        onChanged = ::keep
    }

    private fun keep() {
        store.edit().putString(TEXTS, JSONArray(drafts.kept()).toString()).apply()
    }

    private fun read(): List<String> = try {
        JSONArray(store.getString(TEXTS, null) ?: "[]").let { all -> List(all.length(), all::getString) }
    } catch (broken: JSONException) {
        emptyList()
    }

    private companion object {
        const val FILE = "drafts"
        const val TEXTS = "texts"
    }
}
