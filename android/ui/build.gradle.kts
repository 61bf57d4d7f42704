// The screens: Compose only, nothing of android.*, so that the desktop window draws the very same.
plugins {
    alias(libs.plugins.android.library)
    alias(libs.plugins.compose.compiler)
}

android {
    namespace = "app.restwater.ui"
    compileSdk { version = release(libs.versions.compileSdk.get().toInt()) { minorApiLevel = 0 } }
    defaultConfig { minSdk = libs.versions.minSdk.get().toInt() }
    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }
    sourceSets.named("main") { kotlin.directories += "src/generated/kotlin" }
}

dependencies {
    api(libs.compose.ui)
    api(libs.compose.foundation)
    // Android Studio's previews (src/debug): in no release.
    debugImplementation(libs.compose.ui.tooling.preview)
    debugImplementation(libs.compose.ui.tooling)
    // On a device JNA comes as an aar with its own native part for every ABI.
    api(libs.jna) { artifact { type = "aar" } }
}
