// The Gradle build for phones. Not run here: it needs the Android SDK, the NDK and the Gradle of gradle/wrapper
// (android/README.md). The same Kotlin is compiled and tested by ./dev test kotlin and ./dev test android, and packed by
// ./dev apk.
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
