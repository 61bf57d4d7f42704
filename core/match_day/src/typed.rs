//! A weight as it is typed on a number pad: pounds, then ounces, then drams, or kilograms with a decimal point.
//!
//! A digit that is impossible at its position is ignored, so that the text is a valid weight at every moment.

use super::weight::Weight;

/// Digits of pounds and of kilograms.
const WHOLE_DIGITS: usize = 3;
/// Decimals of a kilogram, which are grams.
const DECIMALS: usize = 3;
/// Sixteen ounces are a pound, sixteen drams an ounce.
const SIXTEEN: u32 = 16;

/// The scales that a weight is read from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scales {
    /// Pounds, ounces and drams.
    Imperial,
    /// Kilograms and grams.
    Metric,
}

/// What has been typed so far.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TypedWeight {
    scales: Scales,
    /// One part for each unit typed so far; the digits go to the last one.
    parts: Vec<String>,
}

impl TypedWeight {
    /// The digits typed so far, a stroke after each unit: what [`Self::again`] takes.
    pub fn digits(&self) -> String {
        self.parts.join("/")
    }

    /// The same digits typed again.
    pub fn again(scales: Scales, digits: &str) -> Self {
        let mut typed = Self::new(scales);
        for key in digits.chars() {
            match key.to_digit(10) {
                Some(digit) => typed.digit(digit as u8),
                None => typed.next_part(),
            }
        }
        typed
    }

    /// Nothing typed yet.
    pub fn new(scales: Scales) -> Self {
        Self { scales, parts: vec![String::new()] }
    }

    /// The scales it is typed for.
    pub fn scales(&self) -> Scales {
        self.scales
    }

    /// Whether nothing was typed.
    pub fn is_empty(&self) -> bool {
        self.parts.iter().all(String::is_empty) && self.parts.len() == 1
    }

    /// Which part the next digit belongs to: 0 for pounds or kilograms.
    pub fn part(&self) -> usize {
        self.parts.len() - 1
    }

    fn most_parts(&self) -> usize {
        match self.scales {
            Scales::Imperial => 3,
            Scales::Metric => 2,
        }
    }

    /// Whether the last part is being typed, so that the key of the unit clears the figure.
    pub fn is_at_last_part(&self) -> bool {
        self.parts.len() == self.most_parts()
    }

    /// Whether a digit can follow what was typed.
    pub fn takes(&self, digit: u8) -> bool {
        if digit > 9 {
            return false;
        }
        let part = self.parts.last().map_or("", String::as_str);
        match (self.scales, self.part()) {
            (_, 0) => part.len() < WHOLE_DIGITS && part != "0",
            (Scales::Metric, _) => part.len() < DECIMALS,
            (Scales::Imperial, _) => {
                part != "0" && number(part).saturating_mul(10) + u32::from(digit) < SIXTEEN
            }
        }
    }

    /// Types a digit; an impossible one is ignored.
    pub fn digit(&mut self, digit: u8) {
        if self.takes(digit)
            && let Some(part) = self.parts.last_mut()
        {
            part.push(char::from(b'0' + digit));
        }
    }

    /// Goes on to the next unit; after the last one everything is cleared.
    pub fn next_part(&mut self) {
        if self.is_at_last_part() {
            *self = Self::new(self.scales);
        } else {
            self.parts.push(String::new());
        }
    }

    /// Erases the last digit, and the steps to further units that came after it.
    pub fn rub_out(&mut self) {
        while self.parts.len() > 1 && self.parts.last().is_some_and(String::is_empty) {
            self.parts.pop();
        }
        if let Some(part) = self.parts.last_mut() {
            part.pop();
        }
    }

    /// The weight typed so far.
    pub fn weight(&self) -> Weight {
        let part = |i: usize| self.parts.get(i).map_or("", String::as_str);
        match self.scales {
            Scales::Imperial => {
                let count = |i| i64::from(number(part(i)));
                Weight::Drams((count(0) * 16 + count(1)) * 16 + count(2))
            }
            Scales::Metric => {
                let grams = number(&format!("{:0<3}", part(1)));
                Weight::Grams(i64::from(number(part(0))) * 1_000 + i64::from(grams))
            }
        }
    }

    /// The text shown while it is typed: "6 lb 12 oz", "3.06 kg".
    pub fn shown(&self) -> String {
        let digits = |i: usize| match self.parts.get(i).map(String::as_str) {
            None => None,
            Some("") => Some("0"),
            Some(digits) => Some(digits),
        };
        match self.scales {
            Scales::Imperial => {
                let units = ["lb", "oz", "dr"].iter().enumerate();
                let parts = units.filter_map(|(i, unit)| Some(format!("{} {unit}", digits(i)?)));
                parts.collect::<Vec<_>>().join(" ")
            }
            Scales::Metric => {
                let decimals = self.parts.get(1).map_or_else(String::new, |part| format!(".{part}"));
                format!("{}{decimals} kg", digits(0).unwrap_or("0"))
            }
        }
    }
}

/// The number that some digits make; they are few enough for it.
fn number(digits: &str) -> u32 {
    digits.parse().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Types digits, with `.` for the key of the unit.
    fn typed(scales: Scales, keys: &str) -> TypedWeight {
        TypedWeight::again(scales, keys)
    }

    #[test]
    fn what_was_typed_can_be_typed_again() {
        for keys in ["", "6", "6.12", ".9.8", "12."] {
            let weight = typed(Scales::Imperial, keys);
            assert_eq!(TypedWeight::again(Scales::Imperial, &weight.digits()), weight, "{keys}");
        }
    }

    #[test]
    fn the_last_digit_is_rubbed_out_whatever_unit_was_reached() {
        for (scales, keys, left) in [
            (Scales::Imperial, "80", "8"),
            (Scales::Imperial, "80.", "8"),
            (Scales::Imperial, "80..", "8"),
            (Scales::Imperial, "6.12", "6.1"),
            (Scales::Imperial, "6.1", "6."),
            (Scales::Imperial, ".", ""),
            (Scales::Imperial, "..", ""),
            (Scales::Imperial, "8", ""),
            (Scales::Imperial, "", ""),
            (Scales::Metric, "3.06", "3.0"),
        ] {
            let mut weight = typed(scales, keys);
            weight.rub_out();
            assert_eq!(weight, typed(scales, left), "{keys}");
        }
    }

    #[test]
    fn pounds_ounces_and_drams_are_typed_in_turn() {
        let weight = typed(Scales::Imperial, "6.12");
        assert_eq!(
            (weight.weight(), weight.shown().as_str()),
            (Weight::Drams(6 * 256 + 12 * 16), "6 lb 12 oz")
        );
        let weight = typed(Scales::Imperial, ".9.8");
        assert_eq!((weight.weight(), weight.shown().as_str()), (Weight::Drams(152), "0 lb 9 oz 8 dr"));
        assert_eq!(typed(Scales::Imperial, "12").weight(), Weight::Drams(12 * 256));
        assert!(typed(Scales::Imperial, "6.1.2.").is_empty(), "after the last unit the key clears");
    }

    #[test]
    fn sixteen_ounces_can_not_be_typed() {
        let weight = typed(Scales::Imperial, "6.1");
        assert_eq!((0..=9).filter(|d| weight.takes(*d)).collect::<Vec<_>>(), [0, 1, 2, 3, 4, 5]);
        assert!((0..=9).all(|d| !typed(Scales::Imperial, "6.2").takes(d)));
        assert_eq!(typed(Scales::Imperial, "6.27").weight(), Weight::Drams(6 * 256 + 32));
    }

    #[test]
    fn kilograms_have_a_decimal_point() {
        let weight = typed(Scales::Metric, "3.06");
        assert_eq!((weight.weight(), weight.shown().as_str()), (Weight::Grams(3_060), "3.06 kg"));
        assert_eq!(typed(Scales::Metric, ".35").weight(), Weight::Grams(350));
        assert_eq!(typed(Scales::Metric, "12.3456").weight(), Weight::Grams(12_345), "grams and no finer");
        assert_eq!(typed(Scales::Metric, "9999").weight(), Weight::Grams(999_000));
    }
}
