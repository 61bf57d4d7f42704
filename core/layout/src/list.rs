//! Lists of lines with a key each, from the top of their place.

use super::{GAP_MM, GridPage, Rect, SECONDARY_MM};

/// A line of large text grows up to this height, mm.
const ROOMY_MM: f64 = 26.0;
/// The share of a line at 100 % that what it says has; its details have the rest.
const SAYS_SHARE: f64 = 0.42;

/// The lines of one page of a list of `lines`; beyond the end, the last page. Lines of large text share out the height of their page.
pub fn list_page(place: Rect, px_per_mm: f64, lines: u32, page: u32, large: bool) -> GridPage {
    let (least, gap) = (SECONDARY_MM * px_per_mm, GAP_MM * px_per_mm);
    let fits = (((place.height + gap) / (least + gap)).floor() as u32).max(1);
    let pages = lines.div_ceil(fits).max(1);
    let first = page.min(pages - 1) * fits;
    let shown = (lines - first).min(fits);
    let roomy = (place.height + gap) / f64::from(shown.max(1)) - gap;
    let height = if large { roomy.min(ROOMY_MM * px_per_mm).max(least) } else { least };
    let at = |i: u32| Rect { top: place.top + f64::from(i) * (height + gap), height, ..place };
    GridPage { first, places: (0..shown).map(at).collect(), pages }
}

/// Height of what a line says above its details, px, given the height of the line and the heights that both texts ask for. Neither has
/// less than at 100 %; beyond that each has its share.
pub fn line_says(height: f64, px_per_mm: f64, says: f64, details: f64) -> f64 {
    let least = SECONDARY_MM * px_per_mm;
    let most = height - (1.0 - SAYS_SHARE) * least;
    (height * says / (says + details)).min(most).max(SAYS_SHARE * least)
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLACE: Rect = Rect { left: 2.0, top: 10.0, width: 54.0, height: 64.0 };

    #[test]
    fn every_line_is_on_one_page_and_the_lines_of_a_page_keep_apart_inside_their_place() {
        for (lines, large) in (0..20).flat_map(|lines| [(lines, false), (lines, true)]) {
            let pages = list_page(PLACE, 1.0, lines, 0, large).pages;
            let all: Vec<GridPage> =
                (0..pages).map(|page| list_page(PLACE, 1.0, lines, page, large)).collect();
            let mut next = 0;
            for page in &all {
                assert_eq!((page.first, page.pages), (next, pages));
                next += page.places.len() as u32;
                assert!(page.places.windows(2).all(|two| two[1].top - two[0].bottom() > GAP_MM - 1e-9));
                assert!(
                    page.places
                        .iter()
                        .all(|at| at.height >= SECONDARY_MM && at.bottom() < PLACE.bottom() + 1e-9)
                );
            }
            assert_eq!(next, lines);
            assert_eq!(list_page(PLACE, 1.0, lines, pages + 3, large), all[all.len() - 1]);
        }
    }

    #[test]
    fn lines_of_large_text_share_out_their_page_up_to_a_height() {
        let high = |lines, large| list_page(PLACE, 1.0, lines, 0, large).places[0].height;
        assert_eq!((high(1, false), high(1, true), high(2, true)), (15.0, 26.0, 26.0));
        assert!((high(3, true) - (67.0 / 3.0 - 3.0)).abs() < 1e-9);
    }

    #[test]
    fn neither_text_of_a_line_has_less_than_at_100_percent() {
        assert!((line_says(15.0, 1.0, 4.0, 40.0) - 6.3).abs() < 1e-9);
        assert!(
            (line_says(15.0, 1.0, 40.0, 4.0) - 6.3).abs() < 1e-9,
            "a line of 15 mm has nothing to share out"
        );
        assert!((line_says(26.0, 1.0, 10.0, 10.0) - 13.0).abs() < 1e-9);
        assert!((line_says(26.0, 1.0, 90.0, 10.0) - 17.3).abs() < 1e-9);
        assert!((line_says(26.0, 1.0, 1.0, 90.0) - 6.3).abs() < 1e-9);
    }
}
