//! The report in a browser: it opens in headless Chromium and prints on at most four A4 pages.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use restwater_report::{WhoseDay, report};
use restwater_screen::Wording;
use restwater_session::fold;
use restwater_tests::invented::log_of;
use std::path::Path;
use std::process::Command;

/// Prints a page to PDF.
fn print(html: &Path, pdf: &Path) -> Vec<u8> {
    let out = Command::new("chromium")
        .args(["--headless", "--no-sandbox", "--disable-gpu", "--no-pdf-header-footer"])
        .arg(format!("--print-to-pdf={}", pdf.display()))
        .arg(format!("file://{}", html.display()))
        .output()
        .unwrap();
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    std::fs::read(pdf).unwrap()
}

/// Pages of a PDF: objects of type Page (ISO 32000-1, 7.7.3.3).
fn pages(pdf: &[u8]) -> usize {
    let text = String::from_utf8_lossy(pdf);
    text.matches("/Type /Page").count() - text.matches("/Type /Pages").count()
}

#[test]
#[ignore = "needs Chromium: ./dev test runs it where that is installed"]
fn it_prints_on_at_most_four_pages() {
    let dir = tempfile::tempdir().unwrap();
    for (name, taps) in [("day", 240), ("endless", 2_000)] {
        let ops = log_of(1, 1, taps);
        let session = fold(ops[0].session, &ops);
        assert!(session.casts.len() > taps / 4);
        let html = dir.path().join(format!("{name}.html"));
        std::fs::write(&html, report(&Wording::new(), &session, WhoseDay::Own)).unwrap();
        let count = pages(&print(&html, &dir.path().join(format!("{name}.pdf"))));
        assert!((1..=4).contains(&count), "{name}: {count} pages");
    }
}
