"""apk_gradle.py DEMANDS AAR...: holds the Gradle files of android/ against what the Android Gradle plugin demands (the
lines that ApkDemands prints) and against what each library's aar-metadata.properties does, as Gradle's CheckAarMetadata."""

import re
import sys
import tomllib
from pathlib import Path

ANDROID = Path("android")


def numbers(version):
    return tuple(int(n) for n in re.findall(r"\d+", version.split("-")[0]))


def properties(text):
    return dict(re.findall(r"^\s*([\w.]+)\s*=\s*(.*?)\s*$", text, re.M))


def plugin(demands, versions):
    url = properties((ANDROID / "gradle/wrapper/gradle-wrapper.properties").read_text())["distributionUrl"]
    gradle = re.search(r"gradle-([\d.]+)-(?:bin|all)\.zip$", url)
    if not gradle or numbers(gradle[1]) < numbers(demands["gradle"]):
        yield f"the wrapper has {gradle and gradle[1]}, the Android Gradle plugin wants Gradle {demands['gradle']} or newer"
    if versions["ndk"] != demands["ndk"]:
        yield f"NDK {versions['ndk']} in the catalogue, {demands['ndk']} is the plugin's own"
    if demands["compile-sdk"] != "known":
        yield f"compileSdk {versions['compileSdk']} is {demands['compile-sdk']}"


def libraries(folders, versions):
    held = 0
    for folder in folders:
        metadata = Path(folder) / "META-INF/com/android/build/gradle/aar-metadata.properties"
        if not metadata.exists():
            continue
        held += 1
        said = properties(metadata.read_text())
        name = Path(folder).name
        if int(said.get("minCompileSdk", 1)) > int(versions["compileSdk"]):
            yield f"{name} wants compileSdk {said['minCompileSdk']}, the catalogue has {versions['compileSdk']}"
        if numbers(said.get("minAndroidGradlePluginVersion", "1.0.0")) > numbers(versions["agp"]):
            yield f"{name} wants the Android Gradle plugin {said['minAndroidGradlePluginVersion']} or newer"
        if said.get("coreLibraryDesugaringEnabled") == "true":
            yield f"{name} wants desugaring of Java's library, which is not switched on"
        least = re.search(r'android:minSdkVersion="(\d+)"', (Path(folder) / "AndroidManifest.xml").read_text())
        if least and int(least[1]) > int(versions["minSdk"]):
            yield f"{name} wants Android {least[1]} or newer, minSdk is {versions['minSdk']}"
    print(f"aar-metadata.properties of {held} libraries")
    if held < 10:
        yield f"only {held} libraries with aar-metadata.properties: this check no longer finds them"


def catalogue(toml):
    """Every name of the catalogue is used by a Gradle file, every name they use is there, every reference has a version."""
    files = {f: f.read_text() for f in ANDROID.glob("**/*.gradle.kts")}
    used = {u for text in files.values() for u in re.findall(r"\blibs\.([\w.]+?)(?:\.get\(\))?(?=[^\w.]|\.get\(\))", text)}
    named = {"versions." + v for v in toml["versions"]}
    named |= {re.sub(r"[-_]", ".", it) for it in toml["libraries"]}
    named |= {"plugins." + re.sub(r"[-_]", ".", it) for it in toml["plugins"]}
    yield from (f"the Gradle files use libs.{u}, which the catalogue does not name" for u in sorted(used - named))
    referred = {"versions." + it["version"]["ref"] for t in ("libraries", "plugins") for it in toml[t].values()}
    yield from (f"{r} is referred to and not there" for r in sorted(referred - named))
    yield from (f"the catalogue names {n}, which nothing uses" for n in sorted(named - used - referred))
    for path, text in files.items():
        for opening, closing in ("()", "[]", "{}"):
            if text.count(opening) != text.count(closing):
                yield f"{path}: {opening} and {closing} do not match"


def main(demands, *folders):
    toml = tomllib.loads((ANDROID / "gradle/libs.versions.toml").read_text())
    versions = toml["versions"]
    demands = dict(line.split(" ", 1) for line in Path(demands).read_text().splitlines())
    print(f"Android Gradle plugin {versions['agp']}: Gradle {demands['gradle']}, NDK {demands['ndk']}, {demands['platform']}")
    faults = [*plugin(demands, versions), *libraries(folders, versions), *catalogue(toml)]
    for fault in faults:
        print("FAULT:", fault)
    return bool(faults)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
