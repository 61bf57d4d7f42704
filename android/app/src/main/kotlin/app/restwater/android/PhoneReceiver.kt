package app.restwater.android

import android.Manifest.permission.ACCESS_COARSE_LOCATION
import android.Manifest.permission.ACCESS_FINE_LOCATION
import android.annotation.SuppressLint
import android.content.ActivityNotFoundException
import android.content.Context
import android.content.pm.PackageManager
import android.location.Location
import android.location.LocationManager
import android.os.Build
import android.os.CancellationSignal
import androidx.activity.ComponentActivity
import androidx.activity.result.contract.ActivityResultContracts
import androidx.core.content.ContextCompat
import androidx.core.location.LocationManagerCompat
import app.restwater.core.shellWords
import app.restwater.ui.Position
import app.restwater.ui.Receiver
import app.restwater.ui.ReceiverTrouble
import app.restwater.ui.language
import kotlin.coroutines.resume
import kotlinx.coroutines.delay
import kotlinx.coroutines.suspendCancellableCoroutine
import kotlinx.coroutines.withTimeoutOrNull

/**
 * The phone's satellite receiver, through Android's own LocationManager. The permission is asked for when the key is
 * tapped, never before, and only for the foreground; a refusal is reported, and the key may be tapped again.
 */
internal class PhoneReceiver(private val context: Context) : Receiver {
    private val permission = Asking("position", ActivityResultContracts.RequestMultiplePermissions())

    /** Registers an activity that can ask. */
    fun attach(activity: ComponentActivity) = permission.attach(activity)

    override suspend fun position(): Position {
        val at = try {
            // A rough position is no use for a peg, so a user who once chose "Approximate" is asked for the precise one again. What is
            // granted then is used. If the earlier answer was final, the system asks nothing.
            if (!allowed(ACCESS_FINE_LOCATION)) permission.ask(arrayOf(ACCESS_FINE_LOCATION, ACCESS_COARSE_LOCATION))
            provider()?.let { withTimeoutOrNull(WITHIN_MS) { reading(it) } }
        } catch (refused: SecurityException) {
            throw ReceiverTrouble(shellWords(language()).positionNotAllowed)
        } catch (nobody: ActivityNotFoundException) {
            throw ReceiverTrouble(shellWords(language()).positionNotAllowed)
        }
        at ?: throw ReceiverTrouble(shellWords(language()).positionNotFound)
        val accuracyM = if (at.hasAccuracy()) at.accuracy.toDouble() else Double.NaN
        return Position(at.latitude, at.longitude, accuracyM)
    }

    private fun allowed(permission: String) = ContextCompat.checkSelfPermission(context, permission) == PackageManager.PERMISSION_GRANTED

    private val manager get() = checkNotNull(context.getSystemService(LocationManager::class.java))

    /** The satellite receiver if it may be used, otherwise the network provider, or null if both are switched off. */
    private fun provider(): String? {
        val fine = allowed(ACCESS_FINE_LOCATION)
        if (!fine && !allowed(ACCESS_COARSE_LOCATION)) throw SecurityException("refused")
        val satellites = fine || Build.VERSION.SDK_INT >= Build.VERSION_CODES.S
        val all = listOfNotNull(LocationManager.GPS_PROVIDER.takeIf { satellites }, LocationManager.NETWORK_PROVIDER)
        return all.firstOrNull { it in manager.allProviders && manager.isProviderEnabled(it) }
    }

    /** Android gives up after half a minute, which is too soon for a cold receiver: it is asked again. */
    private suspend fun reading(provider: String): Location? {
        while (true) {
            read(provider)?.let { return it }
            if (!manager.isProviderEnabled(provider)) return null
            delay(AGAIN_MS)
        }
    }

    // The lint sees neither that [provider] has checked the permission nor that [position] catches the exception if the permission
    // is withdrawn meanwhile.
    @SuppressLint("MissingPermission")
    private suspend fun read(provider: String): Location? = suspendCancellableCoroutine { waiting ->
        val stop = CancellationSignal()
        waiting.invokeOnCancellation { stop.cancel() }
        LocationManagerCompat.getCurrentLocation(manager, provider, stop, ContextCompat.getMainExecutor(context)) { at ->
            if (waiting.isActive) waiting.resume(at)
        }
    }

    private companion object {
        /** A cold receiver under open sky takes half a minute or so (common practice, no source). */
        const val WITHIN_MS = 45_000L
        const val AGAIN_MS = 1_000L
    }
}
