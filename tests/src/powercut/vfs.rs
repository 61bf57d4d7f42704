//! The disk of the power-cut test as SQLite sees it: a VFS (sqlite.org/vfs.html) over [`Disk`].
//!
//! Unsafe, since SQLite's interface is C. It relies on SQLite passing back the file from `xOpen`,
//! zero-terminated names, and buffers of the stated length (sqlite.org/c3ref/io_methods.html). The store
//! locks its file exclusively, so there are no other connections and no shared memory; every lock is granted.
#![allow(unsafe_code)]

use super::disk::Disk;
use rusqlite::ffi;
use std::ffi::{CStr, c_char, c_int, c_void};
use std::sync::{Mutex, MutexGuard, Once, PoisonError};

static DISK: Mutex<Option<Disk>> = Mutex::new(None);
static REGISTER: Once = Once::new();

/// The disk in use.
pub(super) fn disk() -> MutexGuard<'static, Option<Disk>> {
    DISK.lock().unwrap_or_else(PoisonError::into_inner)
}

fn with<T>(f: impl FnOnce(&mut Disk) -> T) -> T {
    f(disk().get_or_insert_with(Disk::default))
}

/// From now on SQLite opens files on this disk (`true`) or on the real one (`false`).
pub(super) fn make_default(ours: bool) {
    REGISTER.call_once(|| {
        // SAFETY: called once, with a VFS that lives for ever; the real one is the default until now.
        unsafe {
            let real = ffi::sqlite3_vfs_find(std::ptr::null());
            let mut vfs = *real;
            vfs.iVersion = 1;
            vfs.szOsFile = c_int::try_from(size_of::<File>()).unwrap_or(c_int::MAX);
            vfs.pNext = std::ptr::null_mut();
            vfs.zName = c"powercut".as_ptr();
            vfs.xOpen = Some(open);
            vfs.xDelete = Some(delete);
            vfs.xAccess = Some(access);
            // Full names, randomness, sleep and time remain those of the real VFS, whose data pointer is
            // kept.
            ffi::sqlite3_vfs_register(Box::leak(Box::new(vfs)), 0);
        }
    });
    let name = if ours { c"powercut" } else { c"unix" };
    // SAFETY: both names are registered; making one the default moves it in SQLite's list.
    unsafe {
        ffi::sqlite3_vfs_register(ffi::sqlite3_vfs_find(name.as_ptr()), 1);
    }
}

/// What SQLite keeps for each open file: its own part first, then ours.
#[repr(C)]
struct File {
    base: ffi::sqlite3_file,
    number: usize,
}

static METHODS: ffi::sqlite3_io_methods = ffi::sqlite3_io_methods {
    iVersion: 1,
    xClose: Some(close),
    xRead: Some(read),
    xWrite: Some(write),
    xTruncate: Some(truncate),
    xSync: Some(sync),
    xFileSize: Some(file_size),
    xLock: Some(granted),
    xUnlock: Some(granted),
    xCheckReservedLock: Some(not_reserved),
    xFileControl: Some(no_control),
    xSectorSize: Some(sector_size),
    xDeviceCharacteristics: Some(characteristics),
    xShmMap: None,
    xShmLock: None,
    xShmBarrier: None,
    xShmUnmap: None,
    xFetch: None,
    xUnfetch: None,
};

unsafe fn text<'a>(name: *const c_char) -> Option<&'a str> {
    if name.is_null() {
        return None;
    }
    // SAFETY: SQLite's names end in a zero and outlive the call.
    unsafe { CStr::from_ptr(name) }.to_str().ok()
}

unsafe fn number(file: *mut ffi::sqlite3_file) -> usize {
    // SAFETY: every file SQLite hands us is one that `open` filled in.
    unsafe { (*file.cast::<File>()).number }
}

unsafe extern "C" fn open(
    _: *mut ffi::sqlite3_vfs,
    name: *const c_char,
    file: *mut ffi::sqlite3_file,
    flags: c_int,
    out_flags: *mut c_int,
) -> c_int {
    // SAFETY: SQLite gives room for a `File` (szOsFile) and, or not, a place for the flags.
    unsafe {
        (*file).pMethods = std::ptr::null();
        let Some(name) = text(name) else { return ffi::SQLITE_CANTOPEN };
        let Some(held) = with(|disk| disk.open(name, flags & ffi::SQLITE_OPEN_CREATE != 0)) else {
            return ffi::SQLITE_CANTOPEN;
        };
        (*file.cast::<File>()).number = held;
        (*file).pMethods = &raw const METHODS;
        if !out_flags.is_null() {
            *out_flags = flags;
        }
    }
    ffi::SQLITE_OK
}

unsafe extern "C" fn delete(_: *mut ffi::sqlite3_vfs, name: *const c_char, _: c_int) -> c_int {
    // SAFETY: see `text`.
    if let Some(name) = unsafe { text(name) } {
        with(|disk| disk.delete(name));
    }
    ffi::SQLITE_OK
}

unsafe extern "C" fn access(
    _: *mut ffi::sqlite3_vfs,
    name: *const c_char,
    _: c_int,
    out: *mut c_int,
) -> c_int {
    // SAFETY: see `text`; `out` is a place for the answer.
    unsafe { *out = c_int::from(text(name).is_some_and(|name| with(|disk| disk.exists(name)))) };
    ffi::SQLITE_OK
}

unsafe extern "C" fn close(_: *mut ffi::sqlite3_file) -> c_int {
    ffi::SQLITE_OK
}

unsafe extern "C" fn read(file: *mut ffi::sqlite3_file, to: *mut c_void, len: c_int, at: i64) -> c_int {
    let (len, at) = (len as usize, at as usize);
    // SAFETY: the buffer is `len` bytes long.
    let to = unsafe { std::slice::from_raw_parts_mut(to.cast::<u8>(), len) };
    // SAFETY: see `number`.
    let number = unsafe { number(file) };
    let there = with(|disk| {
        let bytes = disk.contents(number).get(at..).unwrap_or_default();
        let there = bytes.len().min(len);
        to[..there].copy_from_slice(&bytes[..there]);
        there
    });
    to[there..].fill(0);
    if there < len { ffi::SQLITE_IOERR_SHORT_READ } else { ffi::SQLITE_OK }
}

unsafe extern "C" fn write(file: *mut ffi::sqlite3_file, from: *const c_void, len: c_int, at: i64) -> c_int {
    // SAFETY: the buffer is `len` bytes long.
    let bytes = unsafe { std::slice::from_raw_parts(from.cast::<u8>(), len as usize) };
    // SAFETY: see `number`.
    let number = unsafe { number(file) };
    match with(|disk| disk.write(number, at as usize, bytes)) {
        Ok(()) => ffi::SQLITE_OK,
        Err(super::disk::Full) => ffi::SQLITE_FULL,
    }
}

unsafe extern "C" fn truncate(file: *mut ffi::sqlite3_file, len: i64) -> c_int {
    // SAFETY: see `number`.
    let number = unsafe { number(file) };
    with(|disk| disk.truncate(number, len as usize));
    ffi::SQLITE_OK
}

unsafe extern "C" fn sync(file: *mut ffi::sqlite3_file, _: c_int) -> c_int {
    // SAFETY: see `number`.
    let number = unsafe { number(file) };
    with(|disk| disk.sync(number));
    ffi::SQLITE_OK
}

unsafe extern "C" fn file_size(file: *mut ffi::sqlite3_file, size: *mut i64) -> c_int {
    // SAFETY: see `number`.
    let number = unsafe { number(file) };
    let len = with(|disk| disk.contents(number).len());
    // SAFETY: `size` is a place for the answer.
    unsafe { *size = i64::try_from(len).unwrap_or(i64::MAX) };
    ffi::SQLITE_OK
}

unsafe extern "C" fn granted(_: *mut ffi::sqlite3_file, _: c_int) -> c_int {
    ffi::SQLITE_OK
}

unsafe extern "C" fn not_reserved(_: *mut ffi::sqlite3_file, out: *mut c_int) -> c_int {
    // SAFETY: `out` is a place for the answer.
    unsafe { *out = 0 };
    ffi::SQLITE_OK
}

unsafe extern "C" fn no_control(_: *mut ffi::sqlite3_file, _: c_int, _: *mut c_void) -> c_int {
    ffi::SQLITE_NOTFOUND
}

unsafe extern "C" fn sector_size(_: *mut ffi::sqlite3_file) -> c_int {
    4_096
}

/// The same as the real Unix VFS: a torn write damages nothing next to it.
unsafe extern "C" fn characteristics(_: *mut ffi::sqlite3_file) -> c_int {
    ffi::SQLITE_IOCAP_POWERSAFE_OVERWRITE
}
