package android.bluetooth

/**
 * A class of Android 16 that Robolectric's own classes name in their signatures: without it, the frameworks of earlier
 * versions can't be loaded. Restwater does not use it.
 */
@Suppress("ClassName", "unused")
class `BluetoothDevice$BluetoothAddress`
