//! Words for what was changed, to what, and with what result. They are used for today's changes and for
//! questions over days.

use super::feed::feed_weight;
use super::figures::whole;
use super::place::length_words;
use super::{Arg, Wording};
use restwater_compare::Factor;
use restwater_log::WeightUnit;
use restwater_session::{FED_WITHIN_MIN, FeedBand, length_mm};

/// "Pop-up height".
pub(crate) fn factor_words(words: &Wording, factor: Factor) -> String {
    factor_said(words, "factor", factor)
}

/// The same within a sentence: not every language writes it small there.
pub(crate) fn factor_within(words: &Wording, factor: Factor) -> String {
    factor_said(words, "factor-in", factor)
}

fn factor_said(words: &Wording, id: &str, factor: Factor) -> String {
    let name = serde_json::to_value(factor).ok();
    let name = name.as_ref().and_then(serde_json::Value::as_str).unwrap_or_default();
    words.say_with(&format!("{id}-{name}"), &[("minutes", Arg::Count(FED_WITHIN_MIN as usize))])
}

/// A value in words, as far as no session is needed for it: a length as it was meant, a lead by its grams, feed by its
/// amount, anything else as it is spelled.
pub(crate) fn value_of_factor(words: &Wording, factor: Factor, value: &str, unit: WeightUnit) -> String {
    match factor {
        Factor::Height | Factor::Hooklength => {
            length_mm(value).map_or_else(|| value.to_owned(), |mm| length_words(words, mm))
        }
        Factor::Lead => words.decimals(value),
        Factor::Feed => words.say(if is_fed(value) { "value-fed" } else { "value-not-fed" }),
        Factor::FeedAmount => {
            let band = FeedBand::ALL.into_iter().position(|band| band.spelled() == value);
            band.map_or_else(|| value.to_owned(), |place| band_words(words, place, unit))
        }
        _ => value.to_owned(),
    }
}

/// Whether casts on this side of a change were in fed water.
pub(crate) fn is_fed(value: &str) -> bool {
    value == "fed"
}

/// "100 to 500 g", "about 4 oz to 1 lb 2 oz": the limits are grams, so ounces are rounded.
fn band_words(words: &Wording, place: usize, unit: WeightUnit) -> String {
    let [low, high] = FeedBand::LIMITS_G.map(|grams| feed_weight(words, unit, grams * 1_000));
    let about = if unit == WeightUnit::Drams { "about-" } else { "" };
    words.say_with(
        &format!("value-feed-{about}{place}"),
        &[("low", Arg::Text(&low)), ("high", Arg::Text(&high))],
    )
}

/// "4 bites in 6 casts, 85 min".
pub(crate) fn side_counts(words: &Wording, bites: u64, casts: usize, minutes: f64) -> String {
    let minutes = whole(minutes);
    let counts = [
        ("bites", Arg::Count(bites as usize)),
        ("casts", Arg::Count(casts)),
        ("minutes", Arg::Text(&minutes)),
    ];
    words.say_with("change-side", &counts)
}
