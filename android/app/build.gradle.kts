// The app: activity, alarm, notification, files. Its native library is built by cargo-ndk before it is packed.
plugins {
    alias(libs.plugins.android.application)
    alias(libs.plugins.compose.compiler)
}

val abis = listOf("arm64-v8a", "armeabi-v7a", "x86_64")
val nativeLibraries = layout.buildDirectory.dir("native")

android {
    namespace = "app.restwater"
    compileSdk = libs.versions.compileSdk.get().toInt()
    ndkVersion = libs.versions.ndk.get()
    defaultConfig {
        applicationId = "app.restwater"
        minSdk = libs.versions.minSdk.get().toInt()
        targetSdk = libs.versions.targetSdk.get().toInt()
        versionCode = 1
        versionName = "0.1.0"
        testInstrumentationRunner = "androidx.test.runner.AndroidJUnitRunner"
        ndk { abiFilters += abis }
    }
    buildTypes {
        release {
            isMinifyEnabled = true
            isShrinkResources = true
            proguardFiles(getDefaultProguardFile("proguard-android-optimize.txt"), "proguard-rules.pro")
        }
    }
    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }
    // Libraries stay unpacked in the APK and are mapped from it, in pages of 16 KB.
    packaging { jniLibs { useLegacyPackaging = false } }
    sourceSets.named("main") { jniLibs.directories += nativeLibraries.get().asFile.path }
}

val cargoNdk =
    tasks.register<Exec>("cargoNdk") {
        description = "Builds librestwater.so for every ABI (cargo install cargo-ndk, rustup target add ...)."
        workingDir = rootDir.resolve("..")
        environment("ANDROID_NDK_HOME", androidComponents.sdkComponents.ndkDirectory.get().asFile.path)
        environment("RUSTFLAGS", "-C link-arg=-Wl,-z,max-page-size=16384")
        commandLine(
            listOf("cargo", "ndk", "--platform", libs.versions.minSdk.get(), "--output-dir", nativeLibraries.get().asFile.path) +
                abis.flatMap { listOf("--target", it) } +
                listOf("build", "--release", "--locked", "--package", "restwater-bindings"),
        )
        outputs.dir(nativeLibraries)
        outputs.upToDateWhen { false } // cargo knows better
    }

tasks.named("preBuild") { dependsOn(cargoNdk) }

dependencies {
    implementation(project(":ui"))
    implementation(libs.activity.compose)
    implementation(libs.core) // NotificationCompat, FileProvider
    implementation(libs.coroutines)
    androidTestImplementation(libs.compose.test)
    androidTestImplementation(libs.test.runner)
}
