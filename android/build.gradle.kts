// AGP 9 compiles Kotlin itself; the Kotlin it uses is raised to ours by naming the plugin here.
buildscript {
    repositories {
        google()
        mavenCentral()
    }
    dependencies { classpath(libs.kotlin.gradle) }
}

plugins {
    alias(libs.plugins.android.application) apply false
    alias(libs.plugins.android.library) apply false
    alias(libs.plugins.compose.compiler) apply false
}

// Everything that is built lies under target/, like Rust's and Maven's.
allprojects { layout.buildDirectory = rootDir.resolve("../target/gradle/$name") }
