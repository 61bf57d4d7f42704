// The app: activity, alarm, notification, files. Its native library is built by cargo-ndk before it is packed.
import java.io.File
import javax.inject.Inject
import org.gradle.process.ExecOperations

plugins {
    alias(libs.plugins.android.application)
    alias(libs.plugins.compose.compiler)
}

// A release has a library for each kind of phone; a debug build has one, of the phone that Android Studio is about to run
// it on, so that trying a change does not build the core three times.
val releaseAbis = listOf("arm64-v8a", "armeabi-v7a", "x86_64")
val debugAbis = listOf(providers.gradleProperty("android.injected.build.abi").orNull?.substringBefore(',') ?: "arm64-v8a")

android {
    namespace = "app.restwater"
    compileSdk { version = release(libs.versions.compileSdk.get().toInt()) { minorApiLevel = 0 } }
    ndkVersion = libs.versions.ndk.get()
    defaultConfig {
        applicationId = "app.restwater"
        minSdk = libs.versions.minSdk.get().toInt()
        targetSdk = libs.versions.targetSdk.get().toInt()
        versionCode = 1
        versionName = "0.1.0"
        testInstrumentationRunner = "androidx.test.runner.AndroidJUnitRunner"
    }
    // The words of the app are the core's; of the libraries' words the same languages are taken.
    androidResources { localeFilters += listOf("en", "de", "fr") }
    signingConfigs {
        // Without these a release is built unsigned, and can't be installed before it is signed.
        providers.environmentVariable("RESTWATER_KEYSTORE").orNull?.let { keystore ->
            create("release") {
                storeFile = file(keystore)
                storePassword = providers.environmentVariable("RESTWATER_KEYSTORE_PASSWORD").get()
                keyAlias = providers.environmentVariable("RESTWATER_KEY_ALIAS").get()
                keyPassword = providers.environmentVariable("RESTWATER_KEY_PASSWORD").get()
                enableV3Signing = true
            }
        }
    }
    buildTypes {
        debug { ndk { abiFilters += debugAbis } }
        release {
            ndk { abiFilters += releaseAbis }
            isMinifyEnabled = true
            isShrinkResources = true
            proguardFiles(getDefaultProguardFile("proguard-android-optimize.txt"), "proguard-rules.pro")
            signingConfig = signingConfigs.findByName("release")
        }
    }
    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }
    packaging {
        // Libraries stay unpacked in the APK and are mapped from it, in pages of 16 KB.
        jniLibs { useLegacyPackaging = false }
        // Of what is neither a class nor a resource only META-INF/services is looked up on a phone.
        resources { excludes += listOf("**/*.kotlin_builtins", "DebugProbesKt.bin", "META-INF/*.version", "META-INF/**/*.pro", "META-INF/androidx/**") }
    }
    testOptions {
        unitTests {
            isIncludeAndroidResources = true
            all { test ->
                // Gradle's own 512 MB are too little for five frameworks in one process.
                test.maxHeapSize = "2g"
                test.systemProperty("jna.library.path", rootDir.resolve("../target/release").path)
                test.systemProperty("restwater.tree", rootDir.resolve("..").path)
                test.systemProperty("restwater.screens", rootDir.resolve("../target/screens/android").path)
                test.jvmArgs("--add-opens", "java.base/java.io=ALL-UNNAMED", "--add-opens", "java.base/java.lang=ALL-UNNAMED", "--add-opens", "java.base/jdk.internal.access=ALL-UNNAMED")
            }
        }
    }
    // The typeface, the same files as on iOS and in a window.
    sourceSets.named("main") { res.directories += "../../core/face/res" }
    sourceSets.named("test") { resources.directories += "robolectric" }
}

/** Runs cargo: where rustup puts it, since Android Studio started from a desktop does not have a shell's PATH. */
abstract class Cargo @Inject constructor(private val processes: ExecOperations) : DefaultTask() {
    @get:Internal abstract val tree: DirectoryProperty

    protected fun cargo(arguments: List<String>, variables: Map<String, String> = emptyMap()) {
        val home = System.getenv("CARGO_HOME") ?: "${System.getProperty("user.home")}/.cargo"
        val path = listOf("$home/bin", System.getenv("PATH").orEmpty()).joinToString(File.pathSeparator)
        val found = path.split(File.pathSeparator).map { File(it, "cargo") }.firstOrNull { it.canExecute() }
            ?: throw GradleException("No cargo in $path: install Rust with rustup, or set CARGO_HOME.")
        processes.exec {
            workingDir = tree.get().asFile
            environment(variables + ("PATH" to path))
            commandLine(listOf(found.path) + arguments)
        }
    }
}

/** librestwater.so for the ABIs of a build type, by cargo-ndk (cargo install cargo-ndk, rustup target add ...). */
abstract class CargoNdk @Inject constructor(processes: ExecOperations) : Cargo(processes) {
    @get:Input abstract val abis: ListProperty<String>
    @get:Input abstract val profile: Property<String>
    @get:Input abstract val platform: Property<String>
    @get:Internal abstract val ndk: DirectoryProperty
    @get:OutputDirectory abstract val libraries: DirectoryProperty

    @TaskAction
    fun build() {
        val targets = abis.get().flatMap { listOf("--target", it) }
        cargo(
            listOf("ndk", "--platform", platform.get(), "--output-dir", libraries.get().asFile.path) + targets +
                listOf("build", "--profile", profile.get(), "--locked", "--package", "restwater-bindings", "--no-default-features"),
            mapOf("ANDROID_NDK_HOME" to ndk.get().asFile.path, "RUSTFLAGS" to "-C link-arg=-Wl,-z,max-page-size=16384"),
        )
    }
}

/** The core for this machine, which the tests load. */
abstract class CargoHost @Inject constructor(processes: ExecOperations) : Cargo(processes) {
    @TaskAction fun build() = cargo(listOf("build", "--release", "--locked", "--package", "restwater-bindings"))
}

androidComponents {
    onVariants { variant ->
        val shipped = variant.buildType == "release"
        val task =
            tasks.register<CargoNdk>("cargoNdk${variant.name.replaceFirstChar(Char::uppercase)}") {
                tree = rootDir.resolve("..")
                abis = if (shipped) releaseAbis else debugAbis
                profile = if (shipped) "release" else "dev"
                platform = libs.versions.minSdk
                ndk = sdkComponents.ndkDirectory
                outputs.upToDateWhen { false } // cargo knows better
            }
        variant.sources.jniLibs?.addGeneratedSourceDirectory(task) { it.libraries }
    }
}

val cargoHost = tasks.register<CargoHost>("cargoHost") { tree = rootDir.resolve("..") }
tasks.withType<Test>().configureEach { dependsOn(cargoHost) }

dependencies {
    implementation(project(":ui"))
    implementation(libs.activity.compose)
    implementation(libs.core) // NotificationCompat, FileProvider
    implementation(libs.coroutines)
    androidTestImplementation(libs.compose.ui.test.junit4)
    androidTestImplementation(libs.test.runner)
    testImplementation(libs.compose.ui.test.junit4)
    testImplementation(libs.test.core)
    testImplementation(libs.robolectric)
    testImplementation(libs.jna) // the plain jar, with JNA's native part for this machine
    debugImplementation(libs.compose.ui.test.manifest) // the empty activity of Compose's test rule
}
