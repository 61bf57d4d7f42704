//! Which pages of a write-ahead log belong to a transaction that was completed.
//!
//! SQLite file format, section 4 "The Write-Ahead Log" (sqlite.org/fileformat2.html): a header of 32 bytes with the page
//! size at 8 and two salts at 16; then frames, each of a header of 24 bytes and a page. A frame's header has the page's
//! number at 0, at 4 the size of the database if the frame ends a transaction and otherwise 0, and at 8 the salts of the
//! log. When SQLite restarts the log, its salts change, and frames of the earlier log remain after the new ones.

use std::collections::HashSet;

const LOG_HEADER: usize = 32;
const FRAME_HEADER: usize = 24;
/// The page size of every store, for a log whose header is damaged.
const PAGE: usize = 4_096;

type Salts = [u8; 8];

/// The pages of completed transactions, in the order of the log.
///
/// A frame counts if it ends a transaction, or if a later frame with the same salts does. Frames after the last of
/// these are of a transaction that was never completed, so no key answered for it. The checksums play no part here: SQLite
/// stops at the first one that is wrong, whereas an entry behind a damaged frame was acknowledged and must not be lost. Each
/// entry has a hash of its own. The price: a last transaction of which the power cut took only frames in the middle can't be
/// told from a damaged one, and counts.
pub(super) fn committed_pages(log: &[u8]) -> Vec<&[u8]> {
    let Some((header, frames)) = log.split_at_checked(LOG_HEADER) else { return Vec::new() };
    let page = page_size(header);
    let frames: Vec<&[u8]> = frames.chunks(FRAME_HEADER + page).filter(|f| f.len() > FRAME_HEADER).collect();
    let log_salts = salts(header, 16);
    let mut completed: HashSet<Salts> = HashSet::new();
    let mut pages = Vec::new();
    for (i, frame) in frames.iter().enumerate().rev() {
        let own = salts(frame, 8);
        let before = i.checked_sub(1).map_or(log_salts, |i| salts(frames[i], 8));
        let alone = own != before && frames.get(i + 1).is_none_or(|next| salts(next, 8) != own);
        // The file may end within a frame; half a frame ends no transaction.
        if frame.len() == FRAME_HEADER + page && frame[4..8] != [0; 4] {
            completed.insert(own);
        }
        // Salts that no neighbour has come from a damaged header: the frame belongs to the log around it.
        if completed.contains(&own) || alone && completed.contains(&before) {
            pages.push(&frame[FRAME_HEADER..]);
        }
    }
    pages.reverse();
    pages
}

fn page_size(header: &[u8]) -> usize {
    let size = header.get(8..12).and_then(|bytes| bytes.try_into().ok()).map_or(0, u32::from_be_bytes);
    let size = usize::try_from(size).unwrap_or(0);
    if size.is_power_of_two() && (512..=65_536).contains(&size) { size } else { PAGE }
}

fn salts(header: &[u8], at: usize) -> Salts {
    header.get(at..at + 8).and_then(|bytes| bytes.try_into().ok()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A log of pages of 512 bytes; a frame is its salt, whether it ends a transaction, and the byte that fills its page.
    fn log(salt: u8, frames: &[(u8, bool, u8)]) -> Vec<u8> {
        let mut bytes = vec![0; LOG_HEADER];
        bytes[8..12].copy_from_slice(&512_u32.to_be_bytes());
        bytes[16..24].fill(salt);
        for (salt, ends, fill) in frames {
            bytes.extend([0, 0, 0, 1, 0, 0, 0, u8::from(*ends)]);
            bytes.extend([*salt; 8]);
            bytes.extend([0; 8]);
            bytes.extend([*fill; 512]);
        }
        bytes
    }

    fn found(log: &[u8]) -> Vec<u8> {
        committed_pages(log).iter().map(|page| page[0]).collect()
    }

    #[test]
    fn pages_after_the_last_end_of_a_transaction_are_left_out() {
        let three = [(7, false, 1), (7, true, 2), (7, false, 3)];
        assert_eq!(found(&log(7, &three)), [1, 2]);
        assert_eq!(found(&log(7, &[(7, false, 1)])), [] as [u8; 0]);
        let mut cut = log(7, &[(7, true, 1), (7, false, 2), (7, true, 3)]);
        cut.truncate(cut.len() - 1);
        assert_eq!(found(&cut), [1], "half a page ends nothing");
    }

    #[test]
    fn pages_of_an_earlier_log_count_by_its_own_ends() {
        let frames = [(7, true, 1), (7, false, 2), (6, false, 3), (6, true, 4), (6, false, 5)];
        assert_eq!(found(&log(7, &frames)), [1, 3, 4]);
    }

    #[test]
    fn a_damaged_header_hides_no_page_before_the_end_of_a_transaction() {
        assert_eq!(found(&log(7, &[(7, true, 1), (0x5a, false, 2), (7, true, 3)])), [1, 2, 3]);
        assert_eq!(found(&log(0x5a, &[(7, false, 1), (7, true, 2)])), [1, 2], "that of the log");
        assert_eq!(found(&log(7, &[(7, true, 1), (0x5a, false, 2)])), [1]);
    }

    #[test]
    fn no_bytes_make_it_fail() {
        for length in [0, 1, 31, 32, 33, 56, 57, 600] {
            assert!(found(&vec![0; length]).is_empty());
            let _ = found(&vec![0xff; length]);
        }
    }
}
