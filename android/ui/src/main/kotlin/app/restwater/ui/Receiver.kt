package app.restwater.ui

import app.restwater.core.shellWords

/** Where the phone is, degrees north and east (WGS 84), and how accurate it says that is. */
class Position(val latDeg: Double, val lonDeg: Double, val accuracyM: Double)

/** The phone's satellite receiver, asked once when its key is tapped; never in the background, and never required. */
interface Receiver {
    /** Where the phone is now; throws [ReceiverTrouble] if that is not allowed or can't be read. */
    suspend fun position(): Position
}

/** Why no position came, in words for the user. */
class ReceiverTrouble(text: String) : Exception(text)

/** A device without a receiver, such as a PC. */
object NoReceiver : Receiver {
    override suspend fun position(): Position = throw ReceiverTrouble(shellWords(language()).noReceiver)
}
