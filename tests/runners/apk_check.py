"""apk_check.py APK JNA-CLASSES BINDINGS CHECKED: holds the parts of an APK against each other (androguard) and its sizes
against those of the file CHECKED. One line for each thing that is not as it must be; ends with 1 when there was one."""

import re
import subprocess
import sys
import zipfile
from pathlib import Path

from loguru import logger

logger.remove()  # androguard tells every step
from androguard.core.apk import APK  # noqa: E402
from androguard.core.dex import DEX  # noqa: E402

NETWORK = {"INTERNET", "ACCESS_NETWORK_STATE", "ACCESS_WIFI_STATE", "CHANGE_NETWORK_STATE", "CHANGE_WIFI_STATE"}
NATIVE = 0x100
CORE = "app.restwater.core"
PAGE = 16 * 1024
GROWTH = 1.03  # more than that over the last checked size is a fault, until the file CHECKED says otherwise
LIMITS = {"without librestwater.so": 1_800_000, "dex, packed": 1_200_000}


def classes_of(apk):
    """Each class of the dex by its name, as Java writes it: its fields, its methods with their descriptors, its natives."""
    found = {}
    for data in apk.get_all_dex():
        for c in DEX(data).get_classes():
            methods = c.get_methods()
            found[c.get_name()[1:-1].replace("/", ".")] = {
                "fields": {f.get_name() for f in c.get_fields()},
                "methods": {(m.get_name(), m.get_descriptor().replace(" ", "")) for m in methods},
                "native": {m.get_name() for m in methods if m.get_access_flags() & NATIVE},
            }
    return found


def manifest(apk, classes):
    """What the manifest names is in the dex; no way to a network; not open to a debugger."""
    named = {apk.get_attribute_value("application", n) for n in ("name", "appComponentFactory")}
    for kind in (apk.get_activities, apk.get_receivers, apk.get_providers, apk.get_services):
        named |= set(kind())
    # androidx.startup finds its initializers by name in the manifest.
    named |= {
        m.get(apk._ns("name"))
        for m in apk.find_tags("meta-data")
        if m.get(apk._ns("value")) == "androidx.startup"
    }
    named.discard(None)
    print(f"{len(named)} classes are named in the manifest")
    yield from (f"{n} is in the manifest and not in the dex" for n in sorted(named - classes.keys()))
    yield from (f"the permission {p}" for p in apk.get_permissions() if p.rsplit(".", 1)[-1] in NETWORK)
    if apk.get_attribute_value("application", "debuggable") == "true":
        yield "a debugger may attach to it"


def strings_of(library):
    return {s.decode() for s in re.findall(rb"[\x20-\x7e]{1,200}(?=\0)", library)}


def members_of(jar, names):
    """The members of classes in a jar, by javap: (class, name, descriptor)."""
    text = subprocess.check_output(["javap", "-p", "-s", "-cp", jar, *names], text=True)
    name = None
    member = None
    for line in text.splitlines():
        if head := re.match(r"(?:\S.* )?(?:class|interface) ([\w.$]+).*\{$", line):
            name = head[1]
        elif found := re.match(r"    descriptor: (\S+)$", line):
            yield name, member, found[1]
        elif found := re.match(r"  .*?([\w$.]+)(?:\(.*\).*)?;$", line):
            member = "<init>" if found[1] == name else found[1]


def jna(apk, classes, jar):
    """JNA's native part finds classes and members by name: what of JNA's own it names must still be there."""
    library = next(apk.get_file(f) for f in apk.get_files() if f.endswith("/libjnidispatch.so"))
    said = strings_of(library)
    named = sorted(s.replace("/", ".") for s in said if re.fullmatch(r"com/sun/jna/[\w/$]+", s))
    if len(named) < 10:
        yield f"libjnidispatch.so names only {len(named)} classes of JNA: this check no longer reads it"
    yield from (f"libjnidispatch.so names {n}, which is not in the dex" for n in named if n not in classes)
    # A string that is the end of another one is stored once, so a name may also be in the message of its failure only.
    failures = " ".join(s for s in said if s.startswith("Can't obtain"))
    names = said | set(re.findall(r"\w+", failures))
    looked_up = [m for m in members_of(jar, named) if m[1] in names and (m[2] in said or len(m[2]) == 1)]
    print(f"libjnidispatch.so looks up {len(named)} classes and {len(looked_up)} members of JNA's own")
    for owner, member, descriptor in looked_up:
        if owner not in classes:
            continue
        has = classes[owner]
        kept = (member, descriptor) in has["methods"] if descriptor.startswith("(") else member in has["fields"]
        if not kept:
            yield f"libjnidispatch.so looks up {owner}.{member} {descriptor}, which is not in the dex"
    exported = "\n".join(said)
    for name in classes["com.sun.jna.Native"]["native"]:
        if "Java_com_sun_jna_Native_" + name.replace("_", "_1") not in exported:
            yield f"com.sun.jna.Native.{name} is not in libjnidispatch.so"


def bindings(apk, classes, folder):
    """Of the generated bindings JNA finds structures, callbacks and native functions by name."""
    files = sorted(Path(folder).rglob("*.kt"))
    if len(files) != 1:
        yield f"{folder} has {len(files)} files of bindings and not one"
    text = files[0].read_text()
    package = re.search(r"^package ([\w.]+)", text, re.M)[1]
    structures = re.findall(r"@Structure\.FieldOrder\(([^)]*)\)\n(?:internal )?open class (\w+)", text)
    callbacks = re.findall(r"interface (\w+) : com\.sun\.jna\.Callback", text)
    functions = set(re.findall(r"external fun (\w+)\(", text))
    print(f"the bindings have {len(structures)} structures, {len(callbacks)} callbacks and {len(functions)} native functions")
    if package != CORE or not structures or not callbacks or not functions:
        yield f"the bindings in {folder} are not read: this check no longer knows their form"
    # R8 leaves out what nothing uses; what it leaves in must be whole.
    kept = 0
    for fields, name in structures:
        if has := classes.get(f"{CORE}.{name}"):
            kept += 1
            wanted = re.findall(r'"(\w+)"', fields)
            yield from (f"{CORE}.{name}.{f} is not in the dex" for f in wanted if f not in has["fields"])
    for name in callbacks:
        has = classes.get(f"{CORE}.{name}")
        if has and "callback" not in {m for m, _ in has["methods"]}:
            yield f"{CORE}.{name}.callback is not in the dex"
    print(f"{kept} structures of the bindings are in the dex")
    # A record crosses as a RustBuffer, and every call has a RustCallStatus.
    yield from (f"{CORE}.{n} is not in the dex" for n in ("RustBuffer", "UniffiRustCallStatus") if f"{CORE}.{n}" not in classes)
    natives = set().union(*(c["native"] for n, c in classes.items() if n.startswith(CORE + ".")))
    print(f"{len(natives)} native functions of the bindings are in the dex")
    yield from (f"the native function {n} is none of the bindings" for n in natives - functions)
    if len(natives) < 20:
        yield f"only {len(natives)} native functions of the bindings are in the dex"
    ours = next((f for f in apk.get_files() if f.endswith("/librestwater.so")), None)
    if ours:
        said = strings_of(apk.get_file(ours))
        yield from (f"librestwater.so has no {n}" for n in natives if n not in said)
    else:
        print("no librestwater.so in it: its functions are not compared")


def alignment(path):
    """What is mapped directly from the APK: libraries aligned to 16 KB, the resource table to 4 bytes, both uncompressed."""
    with zipfile.ZipFile(path) as archive, open(path, "rb") as raw:
        for entry in archive.infolist():
            library = entry.filename.endswith(".so")
            if not library and entry.filename != "resources.arsc":
                continue
            raw.seek(entry.header_offset + 26)
            name, extra = (int.from_bytes(raw.read(2), "little") for _ in range(2))
            start = entry.header_offset + 30 + name + extra
            if entry.compress_type != zipfile.ZIP_STORED or start % (PAGE if library else 4):
                yield f"{entry.filename} can't be mapped: method {entry.compress_type}, at {start}"


def sizes(path):
    """Bytes of the whole, of the whole without our native library, and of what makes it up, as packed."""
    with zipfile.ZipFile(path) as archive:
        entries = archive.infolist()
    ours = sum(e.compress_size for e in entries if e.filename.endswith("/librestwater.so"))
    dex = [e for e in entries if e.filename.endswith(".dex")]
    return {
        "without librestwater.so": Path(path).stat().st_size - ours,
        "dex, packed": sum(e.compress_size for e in dex),
        "dex, unpacked": sum(e.file_size for e in dex),
        "resources, packed": sum(e.compress_size for e in entries if e.filename.startswith(("res/", "resources."))),
        "JNA's native part": sum(e.compress_size for e in entries if e.filename.endswith("/libjnidispatch.so")),
    }


def grown(path, checked):
    before = {}
    if Path(checked).exists():
        before = {k: int(v) for k, v in re.findall(r"^(.+): (\d+)$", Path(checked).read_text(), re.M)}
    for name, now in sizes(path).items():
        last = before.get(name)
        print(f"{now:>10} bytes  {name}" + (f" (last checked: {last})" if last else ""))
        if now > LIMITS.get(name, now):
            yield f"{name}: {now} bytes, and {LIMITS[name]} is the limit"
        if last and now > last * GROWTH:
            yield f"{name}: {now} bytes after {last}; if that is meant, write it into {checked}"


def main(path, jna_classes, folder, checked):
    apk = APK(path)
    classes = classes_of(apk)
    print(f"{len(classes)} classes, {sum(len(c['methods']) for c in classes.values())} methods")
    faults = [
        *manifest(apk, classes),
        *jna(apk, classes, jna_classes),
        *bindings(apk, classes, folder),
        *alignment(path),
        *grown(path, checked),
    ]
    for fault in faults:
        print("FAULT:", fault)
    return bool(faults)


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
