// The Gradle build for phones. Not run here: it needs the Android SDK, the NDK and a Gradle of 9.2.1 or newer
// (android/README.md). The same Kotlin is compiled and tested by ./dev test kotlin and ./dev test android.
pluginManagement {
    repositories {
        google()
        mavenCentral()
        gradlePluginPortal()
    }
}

dependencyResolutionManagement {
    repositoriesMode = RepositoriesMode.FAIL_ON_PROJECT_REPOS
    repositories {
        google()
        mavenCentral()
    }
}

rootProject.name = "restwater"
include(":ui", ":app")
