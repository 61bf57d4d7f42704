"""Asserts what the Xcode project has to say, read by the pbxproj library as Xcode would read it: `./dev check xcode`.

The contents of the project, its xcconfig, both Info.plists, the scheme and the privacy manifest are checked as a whole,
since a setting counts where it ends up: a target's own setting wins over the project's, and the project's over the
xcconfig's."""

import json
import os
import plistlib
import re
import sys
import xml.etree.ElementTree as xml
from pathlib import Path

from pbxproj import XcodeProject

IOS = Path("ios")
PROJECT = IOS / "Restwater.xcodeproj"
faults = []


def expect(true, fault):
    if not true:
        faults.append(fault)


def xcconfig(path):
    """Its settings; comments and optional includes are left out."""
    lines = [line.split("//")[0].strip() for line in path.read_text().splitlines()]
    return dict(re.split(r"\s*=\s*", line, maxsplit=1) for line in lines if "=" in line)


def settings(project, config_list):
    """The settings of each configuration in a list of configurations."""
    configs = [project.objects[key] for key in project.objects[config_list].buildConfigurations]
    return {config.name: {key: config.buildSettings[key] for key in config.buildSettings.get_keys()} for config in configs}


def resolved(project, target):
    """What each configuration of a target is built with."""
    root = project.objects[project.rootObject]
    shared = settings(project, root.buildConfigurationList)
    files = {c.name: c for c in (project.objects[k] for k in project.objects[root.buildConfigurationList].buildConfigurations)}
    own = settings(project, target.buildConfigurationList)
    answer = {}
    for name, values in own.items():
        base = project.objects[files[name].baseConfigurationReference]
        answer[name] = {**xcconfig(IOS / "App/Config" / base.path), **shared[name], **values}
    return answer


def folders(project, target):
    return {project.objects[key].path for key in target.fileSystemSynchronizedGroups}


def check_targets(project, targets):
    expect(set(targets) == {"Restwater", "WaitActivity", "RestwaterUITests"}, f"targets: {sorted(targets)}")
    want = {
        "Restwater": {"App/Sources", "App/Shared", "App/Resources", "../core/face/res/font"},
        "WaitActivity": {"App/WaitActivity", "App/Shared"},
        "RestwaterUITests": {"App/UITests"},
    }
    for name, target in targets.items():
        expect(folders(project, target) == want[name], f"{name} is made of {sorted(folders(project, target))}")
        for folder in folders(project, target):
            expect((IOS / folder).is_dir(), f"{name}: there is no folder {folder}")
        for config, values in resolved(project, target).items():
            own = settings(project, target.buildConfigurationList)[config]
            at = f"{name}, {config}"
            # The preset of a target would win over the project's: the layout is one for phones.
            expect(own.get("TARGETED_DEVICE_FAMILY") == "1", f"{at}: TARGETED_DEVICE_FAMILY is {own.get('TARGETED_DEVICE_FAMILY')}")
            expect(values["IPHONEOS_DEPLOYMENT_TARGET"] == "17.0", f"{at}: oldest iOS")
            expect(values["SWIFT_VERSION"] == "6.0", f"{at}: Swift {values['SWIFT_VERSION']}")
            expect(values["DEVELOPMENT_TEAM"] == "$(RESTWATER_TEAM)", f"{at}: the team is not that of Local.xcconfig")
            expect(values["PRODUCT_BUNDLE_IDENTIFIER"].startswith("$(RESTWATER_BUNDLE_ID)"), f"{at}: bundle id")
            expect("MARKETING_VERSION" not in own, f"{at}: a version of its own")


def check_embedding(project, targets):
    app, widget = targets["Restwater"], targets["WaitActivity"]
    needed = [project.objects[project.objects[key].target].name for key in app.dependencies]
    expect(needed == ["WaitActivity"], f"Restwater depends on {needed}")
    phases = [project.objects[key] for key in app.buildPhases]
    copies = [phase for phase in phases if phase.isa == "PBXCopyFilesBuildPhase"]
    expect([str(copy.dstSubfolderSpec) for copy in copies] == ["13"], "the widget goes into PlugIns")
    embedded = [project.objects[key].fileRef for copy in copies for key in copy.files]
    expect(embedded == [widget.productReference], "the app embeds the widget and nothing else")
    linked = [project.objects[key].productRef for phase in phases if phase.isa == "PBXFrameworksBuildPhase" for key in phase.files]
    expect([project.objects[key].productName for key in linked] == ["RestwaterKit"], "the app links RestwaterKit and nothing else")
    packages = [project.objects[key].relativePath for key in project.objects[project.rootObject].packageReferences]
    expect(packages == ["RestwaterKit"] and (IOS / packages[0] / "Package.swift").exists(), f"packages: {packages}")


def plist_of(project, target):
    return {values["INFOPLIST_FILE"] for values in resolved(project, target).values()}


def check_plists(project, targets):
    cargo = re.search(r'^version = "(.*)"', Path("Cargo.toml").read_text(), re.M).group(1)
    said = xcconfig(IOS / "App/Config/Restwater.xcconfig")
    expect(said["MARKETING_VERSION"] == cargo, f"MARKETING_VERSION is {said['MARKETING_VERSION']}, Cargo.toml says {cargo}")
    expect(said["CURRENT_PROJECT_VERSION"].isdigit(), "CURRENT_PROJECT_VERSION is no whole number")
    for name in ("Restwater", "WaitActivity"):
        paths = plist_of(project, targets[name])
        expect(len(paths) == 1, f"{name}: Info.plists {paths}")
        plist = plistlib.loads((IOS / paths.pop()).read_bytes())
        expect(plist["CFBundleShortVersionString"] == "$(MARKETING_VERSION)", f"{name}: CFBundleShortVersionString")
        expect(plist["CFBundleVersion"] == "$(CURRENT_PROJECT_VERSION)", f"{name}: CFBundleVersion")
        expect(plist["CFBundleIdentifier"] == "$(PRODUCT_BUNDLE_IDENTIFIER)", f"{name}: CFBundleIdentifier")
        if name == "Restwater":
            check_app_plist(plist)
        else:
            expect(plist["NSExtension"]["NSExtensionPointIdentifier"] == "com.apple.widgetkit-extension", "WaitActivity is no widget")


def check_app_plist(plist):
    ways = {f"UIInterfaceOrientation{way}" for way in ("Portrait", "LandscapeLeft", "LandscapeRight")}
    expect(set(plist["UISupportedInterfaceOrientations"]) == ways, "the app is upright or on either side")
    expect(plist["NSSupportsLiveActivities"] is True, "Live Activities are not declared")
    for key in ("NSLocationWhenInUseUsageDescription", "NSAlarmKitUsageDescription"):
        expect(plist.get(key), f"{key} is missing: the system would end the app when it asks")
    exported = {kind["UTTypeIdentifier"] for kind in plist["UTExportedTypeDeclarations"]}
    opened = {kind for document in plist["CFBundleDocumentTypes"] for kind in document["LSItemContentTypes"]}
    imported = {kind["UTTypeIdentifier"] for kind in plist.get("UTImportedTypeDeclarations", [])}
    # Maps of swims are opened with the app as on Android; their type is not ours.
    expect(exported == {"app.restwater.op-file"} and imported == {"public.geojson"}, f"declared {exported}, taken from others {imported}")
    expect(opened == exported | imported, f"document types {opened}")
    source = (IOS / "App/Sources/Files/FileDialogs.swift").read_text()
    expect(all(f'"{kind}"' in source for kind in exported), "the type of the file dialogs is another")
    assets = IOS / "App/Resources/Assets.xcassets"
    expect((assets / "AppIcon.appiconset").is_dir(), "there is no AppIcon")
    check_launch_colour(plist, assets)


def check_launch_colour(plist, assets):
    """What shows before the app draws is the paper of the kit's schemes: white would blind at night."""
    name = plist["UILaunchScreen"].get("UIColorName")
    colours = assets / f"{name}.colorset/Contents.json"
    if not colours.exists():
        return expect(False, f"the launch screen's colour is {name}, and there is no {colours}")
    shown = {}
    for one in json.loads(colours.read_text())["colors"]:
        parts = one["color"]["components"]
        scheme = one.get("appearances", [{"value": "light"}])[0]["value"]
        shown[scheme] = "".join(parts[part].removeprefix("0x") for part in ("red", "green", "blue"))
    ink = (IOS / "RestwaterKit/Sources/RestwaterKit/Drawing/Ink.swift").read_text()
    day, night = (re.search(rf"static let {name} = Ink\(paper: 0x(\w+)", ink).group(1) for name in ("day", "night"))
    expect(shown == {"light": day, "dark": night}, f"the launch screen is {shown}, paper is {day} by day and {night} by night")


LANGUAGES = ["en-GB", "de", "fr"]


def strings(path):
    """What a .strings file says: by key, the text. Every line that is no comment is one pair."""
    lines = [line for line in path.read_text().splitlines() if line and not line.startswith("//")]
    pairs = [re.fullmatch(r'"(.+)" = "(.+)";', line) or re.fullmatch(r'(\w+) = "(.+)";', line) for line in lines]
    expect(all(pairs), f"{path}: a line is no pair")
    return {pair[1]: pair[2] for pair in pairs if pair}


def check_languages(project, targets):
    """What the system reads out of the app is there in each language: what Info.plist says, titles, and phrases for Siri."""
    regions = [str(one) for one in project.objects[project.rootObject].knownRegions]
    expect(sorted(regions) == sorted([*LANGUAGES, "Base"]), f"knownRegions {regions}")
    plists = {name: plistlib.loads((IOS / plist_of(project, targets[name]).pop()).read_bytes()) for name in ("Restwater", "WaitActivity")}
    for name, plist in plists.items():
        expect(plist.get("CFBundleLocalizations") == LANGUAGES, f"{name}: CFBundleLocalizations {plist.get('CFBundleLocalizations')}")
    described = {key for key in plists["Restwater"] if key.endswith("UsageDescription")}
    shared = "\n".join(path.read_text() for path in [*(IOS / "App/Shared").glob("*.swift"), IOS / "App/WaitActivity/NextKeyControl.swift"])
    shortcuts = (IOS / "App/Sources/Intents/RestwaterShortcuts.swift").read_text()
    literal = r'"((?:[^"\\]|\\.)*)"'
    titles = set(re.findall(r"(?:LocalizedStringResource = |IntentDescription\(|Parameter\(title: |Label\(|displayName\()" + literal, shared))
    titles |= set(re.findall("shortTitle: " + literal, shortcuts))
    phrases = {p.replace("\\(.applicationName)", "${applicationName}") for p in re.findall(literal, shortcuts) if "applicationName" in p}
    expect(len(titles) > 10 and len(phrases) > 5, f"{len(titles)} titles and {len(phrases)} phrases: this check no longer reads them")
    for language in LANGUAGES[1:]:
        for folder, name, wanted in (
            ("Resources", "InfoPlist", described | {"Restwater entries"}),
            ("Shared", "Localizable", titles),
            ("Resources", "AppShortcuts", phrases),
        ):
            path = IOS / "App" / folder / f"{language}.lproj" / f"{name}.strings"
            expect(path.exists(), f"there is no {path}")
            said = strings(path) if path.exists() else {}
            expect(said.keys() == wanted, f"{path}: not in both {sorted(said.keys() ^ wanted)}")
            kept = [key for key, text in said.items() if ("applicationName" in key) != ("applicationName" in text)]
            expect(not kept, f"{path}: the name of the app in {kept}")


def check_rest(targets):
    entitlements = plistlib.loads((IOS / "App/Config/Restwater.entitlements").read_bytes())
    expect(entitlements == {"com.apple.developer.usernotifications.time-sensitive": True}, f"entitlements {entitlements}")
    manifest = plistlib.loads((IOS / "App/Resources/PrivacyInfo.xcprivacy").read_bytes())
    expect(manifest["NSPrivacyTracking"] is False and manifest["NSPrivacyCollectedDataTypes"] == [], "nothing is collected")
    reasons = {one["NSPrivacyAccessedAPIType"]: one["NSPrivacyAccessedAPITypeReasons"] for one in manifest["NSPrivacyAccessedAPITypes"]}
    kit = "\n".join(path.read_text() for path in (IOS / "RestwaterKit/Sources/RestwaterKit").rglob("*.swift"))
    uses = {
        "NSPrivacyAccessedAPICategorySystemBootTime": "CLOCK_MONOTONIC" in kit,
        "NSPrivacyAccessedAPICategoryUserDefaults": "UserDefaults" in kit,
        # SQLite, in the Rust library, asks for the times and sizes of its own files.
        "NSPrivacyAccessedAPICategoryFileTimestamp": True,
        "NSPrivacyAccessedAPICategoryDiskSpace": sqlite_asks_for_the_file_system(),
    }
    for category, used in uses.items():
        expect(used == (category in reasons), f"{category}: used {used}, with a reason {category in reasons}")
    package = (IOS / "RestwaterKit/Package.swift").read_text()
    for kind in (".systemLibrary(", ".binaryTarget("):
        expect(f'{kind}name: "restwaterFFI"' in package, f"Package.swift has no {kind}: the package's tests link on one system only")
    build = (IOS / "build.sh").read_text()
    expect("--crate-type staticlib" in build, "build.sh links more than the static library")
    expect(re.search(r'path: "(.*xcframework)"', package).group(1) .removeprefix("build/") in build, "build.sh makes another XCFramework than Package.swift takes")
    scheme = xml.parse(PROJECT / "xcshareddata/xcschemes/Restwater.xcscheme")
    ids = {ref.get("BlueprintName"): ref.get("BlueprintIdentifier") for ref in scheme.iter("BuildableReference")}
    for name in ("Restwater", "RestwaterUITests"):
        expect(ids.get(name) == targets[name].get_id(), f"the scheme's {name} is another")
    expect("RestwaterKitTests" in ids, "the scheme runs the kit's tests")


def sqlite_asks_for_the_file_system():
    """Whether the SQLite in the Rust library calls one of the functions that Apple lists under disk space."""
    lock = Path("Cargo.lock").read_text()
    version = re.search(r'name = "libsqlite3-sys"\nversion = "(.*)"', lock).group(1)
    cargo = Path(os.environ.get("CARGO_HOME", Path.home() / ".cargo"))
    found = list(cargo.glob(f"registry/src/*/libsqlite3-sys-{version}/sqlite3/sqlite3.c"))
    expect(found, f"there is no source of libsqlite3-sys {version} under {cargo}: run `cargo fetch --locked` first")
    return any(re.search(r"\bf?statfs\(", path.read_text(errors="replace")) for path in found)


# The first Xcode with the SDK and the compiler that AlarmKit's alert without a stop button needs.
OLDEST_XCODE = (26, 1)


def check_workflows():
    """The hosted Macs build with a named Xcode that is new enough, and the scripts and README say the same."""
    named = set()
    for path in sorted(Path(".github/workflows").glob("*.yml")):
        for job in re.split(r"^  (?=\w)", path.read_text(), flags=re.M):
            if "ios-build.sh" not in job:
                continue
            xcode = re.search(r"DEVELOPER_DIR: /Applications/Xcode_([\d.]+)\.app/Contents/Developer", job)
            expect(xcode, f"{path}: the job that builds the iOS app names no Xcode")
            named.update(xcode.groups() if xcode else [])
    expect(len(named) == 1, f"the workflows build with Xcode {sorted(named)}")
    for version in named:
        expect(tuple(map(int, version.split("."))) >= OLDEST_XCODE, f"the workflows build with Xcode {version}")
    oldest = ".".join(map(str, OLDEST_XCODE))
    expect(f"OLDEST_SDK={oldest}\n" in Path(".github/scripts/ios-build.sh").read_text(), f"ios-build.sh makes a release below SDK {oldest}")
    readme = (IOS / "README.md").read_text()
    for version in [oldest, *named]:
        expect(f"Xcode {version}" in readme, f"ios/README.md does not name Xcode {version}")
    for path in (IOS / "App").rglob("*.swift"):
        for line in path.read_text().splitlines():
            if "canImport(AlarmKit)" in line:
                expect("compiler(>=6.2.1)" in line, f"{path}: {line}: Xcode 26.0 has AlarmKit, but not the alert without a stop button")


# What the phone's system is told, where no compiler and no played system sees it: file, what it says (or, after "no ", what it
# must not say), and what an angler would meet otherwise.
SOURCES = [
    ("App/Sources/Phone/Notifications.swift", ".interruptionLevel = .timeSensitive", "a Focus would hold the alarm back"),
    ("App/Sources/Phone/Loudspeaker.swift", "case .alarm: try session.setCategory(.playback", "the ring switch would mute an alarm in the foreground"),
    ("App/Sources/Phone/Loudspeaker.swift", "no mixWithOthers", "ambient mixes by itself; with playback music would drown the alarm"),
    ("App/Sources/Screens/GlassReader.swift", "width: inside.size.width, height", "keys would be under the camera of a phone on its side"),
    ("App/Sources/Screens/GlassReader.swift", ".offset(x: edges.leading)", "keys would be under the camera of a phone on its side"),
    ("App/Sources/Screens/GlassReader.swift", ".statusBarHidden(", "the status bar would be over the keys of a phone on its side"),
    ("App/Sources/Screens/PiecesView.swift", "piece.place.top - lift", "a line would be typed under the keyboard"),
    ("App/Sources/Screens/SheetView.swift", "Sheet.announcements(from: old, to: new)", "VoiceOver would not tell a digit that was typed"),
    ("App/Sources/RootView.swift", "no Look(ink: .day)", "a log that is being read would be white at night"),
    ("App/Sources/Screens/SheetView.swift", ".defersSystemGestures(on: .all)", "a thumb that slides in from an edge would leave the app"),
    ("App/Sources/Screens/PieceView.swift", ".accessibilityRepresentation {", "VoiceOver would find a canvas in place of a key"),
    ("App/Sources/Screens/PieceView.swift", ".accessibilityElement()", "VoiceOver would not find the pictures"),
    ("App/WaitActivity/WaitActivity.swift", ".supplementalActivityFamilies([.small])", "a watch would not show the wait"),
    ("App/WaitActivity/WaitActivity.swift", "Text(verbatim: key.label).font(.headline).lineLimit(1).minimumScaleFactor(0.6)", "a key's word would be cut"),
    ("App/WaitActivity/WaitActivity.swift", ".dynamicTypeSize(...DynamicTypeSize.xxxLarge)", "three keys would not fit beside each other with the largest letters"),
    ("App/WaitActivity/WaitActivity.swift", "WaitKeys(keys: wait.keys).layoutPriority(1)", "a long sentence would push the keys out of the lock screen"),
    ("App/WaitActivity/WaitActivity.swift", ".frame(maxWidth: width)", "the timer would stretch the island across the screen"),
]


def check_sources():
    for path, text, otherwise in SOURCES:
        source = (IOS / path).read_text()
        says = text.removeprefix("no ") not in source if text.startswith("no ") else text in source
        expect(says, f"{path}: {text}: {otherwise}")


def main():
    project = XcodeProject.load(str(PROJECT / "project.pbxproj"))
    expect(str(project.objectVersion) == "77", f"objectVersion {project.objectVersion}")
    saved = Path("target/xcode/saved.pbxproj")
    project.save(str(saved))
    expect(saved.read_text() == (PROJECT / "project.pbxproj").read_text(), "the library writes the project differently")
    targets = {target.name: target for target in project.objects.get_targets()}
    check_targets(project, targets)
    check_embedding(project, targets)
    check_plists(project, targets)
    check_languages(project, targets)
    check_rest(targets)
    check_sources()
    check_workflows()
    for fault in faults:
        print(fault)
    if faults:
        sys.exit(1)
    print(f"{len(targets)} targets")


main()
