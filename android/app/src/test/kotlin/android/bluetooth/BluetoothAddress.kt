package android.bluetooth

/**
 * A class of Android 16 that Robolectric's own classes name in their signatures: without it the frameworks of earlier
 * versions can't be loaded beside them. Nothing of Restwater has to do with it.
 */
@Suppress("ClassName", "unused")
class `BluetoothDevice$BluetoothAddress`
