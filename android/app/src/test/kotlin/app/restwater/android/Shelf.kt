package app.restwater.android

import android.content.ContentProvider
import android.content.ContentValues
import android.database.Cursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.DocumentsContract
import androidx.core.os.BundleCompat
import java.io.File
import java.io.FileNotFoundException
import java.util.concurrent.CountDownLatch
import java.util.concurrent.TimeUnit

/** Another app's files: one file, none, or a refusal. */
class Shelf : ContentProvider() {
    var file: File? = null
    var refuses = false

    /** Whether it makes files. */
    var makes = false

    /** Whether each file it makes has a place of its own, by its name. */
    var named = false

    /** Whether it removes nothing now. */
    var keeps = false

    /** What was removed. */
    val gone = mutableListOf<String>()

    /** Whether it can't be read now. */
    var unread = false

    /** A slow provider opens a file only when this has come. */
    var waitsFor: CountDownLatch? = null

    /** How many times a file is opened so that writing to it fails. */
    var breaks = 0

    /** How many times the provider fails with an exception of its own when a file is written. */
    var odd = 0
    var deleted = 0

    /** What it was asked for last, and on which thread. */
    var called = ""
    var caller: Thread? = null
    val modes = mutableListOf<String>()

    override fun call(method: String, arg: String?, extras: android.os.Bundle?): android.os.Bundle? {
        called = method
        caller = Thread.currentThread()
        if (method == "android:deleteDocument") {
            if (keeps) throw IllegalStateException("not now")
            deleted += 1
            extras?.let { gone += BundleCompat.getParcelable(it, "uri", Uri::class.java)?.lastPathSegment.orEmpty() }
        }
        if (method != "android:createDocument" || !makes) return null
        val made = if (named) Uri.parse("content://$AUTHORITY/${extras?.getString(DocumentsContract.Document.COLUMN_DISPLAY_NAME)}") else URI
        return android.os.Bundle().apply { putParcelable("uri", made) }
    }

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor {
        waitsFor?.await(20, TimeUnit.SECONDS)
        if (refuses) throw SecurityException("not for you")
        val there = file ?: throw FileNotFoundException("gone")
        if (mode == "r" && unread) throw FileNotFoundException("no signal")
        modes += mode
        if ('w' in mode && odd > 0) {
            odd -= 1
            there.writeText("half")
            throw IllegalStateException("not now")
        }
        if ('w' in mode && breaks > 0) {
            breaks -= 1
            there.writeText("half")
            return ParcelFileDescriptor.open(there, ParcelFileDescriptor.MODE_READ_ONLY)
        }
        return ParcelFileDescriptor.open(there, ParcelFileDescriptor.parseMode(mode))
    }

    override fun onCreate() = true
    override fun query(uri: Uri, columns: Array<String>?, where: String?, values: Array<String>?, order: String?): Cursor? = null
    override fun getType(uri: Uri): String? = null
    override fun insert(uri: Uri, values: ContentValues?): Uri? = null
    override fun delete(uri: Uri, where: String?, values: Array<String>?) = 0
    override fun update(uri: Uri, values: ContentValues?, where: String?, args: Array<String>?) = 0

    companion object {
        const val AUTHORITY = "another.app.files"
        val URI: Uri = Uri.parse("content://$AUTHORITY/1")
    }
}
