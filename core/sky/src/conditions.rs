//! Conditions on the bank, logged in a few taps: every value is a key, with the likeliest first.

use serde::{Deserialize, Serialize};

/// Where the wind comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum WindFrom {
    /// North.
    N,
    /// North-east.
    Ne,
    /// East.
    E,
    /// South-east.
    Se,
    /// South.
    S,
    /// South-west.
    Sw,
    /// West.
    W,
    /// North-west.
    Nw,
}

impl WindFrom {
    /// All eight, clockwise from north.
    pub const ALL: [Self; 8] = [Self::N, Self::Ne, Self::E, Self::Se, Self::S, Self::Sw, Self::W, Self::Nw];

    /// Degrees clockwise from north.
    pub fn degrees(self) -> f64 {
        45.0 * f64::from(self as u8)
    }
}

/// How hard it blows, in steps of the Beaufort scale (World Meteorological Organization, WMO-No. 8).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum WindStrength {
    /// Force 0: smoke goes straight up.
    Calm,
    /// Forces 1 to 3: light to gentle breeze.
    Light,
    /// Force 4: moderate breeze.
    Moderate,
    /// Force 5: fresh breeze.
    Fresh,
    /// Forces 6 and 7: strong breeze, near gale.
    Strong,
    /// Force 8 and over.
    Gale,
}

impl WindStrength {
    /// All, from calm up.
    pub const ALL: [Self; 6] =
        [Self::Calm, Self::Light, Self::Moderate, Self::Fresh, Self::Strong, Self::Gale];
}

/// Colour of the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum WaterColour {
    /// The bottom shows in the margin.
    Clear,
    /// A tinge.
    Tinged,
    /// Coloured.
    Coloured,
    /// As brown as it gets.
    Muddy,
}

impl WaterColour {
    /// All, from clear.
    pub const ALL: [Self; 4] = [Self::Clear, Self::Tinged, Self::Coloured, Self::Muddy];
}

/// Conditions as logged; anything may be left out. Temperatures in tenths of a degree Celsius.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Conditions {
    /// Air.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub air: Option<i16>,
    /// Water, by thermometer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub water: Option<i16>,
    /// Where the wind comes from; nothing when calm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wind_from: Option<WindFrom>,
    /// How hard it blows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wind: Option<WindStrength>,
    /// Eighths of the sky in cloud (oktas).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cloud: Option<u8>,
    /// Colour of the water.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub colour: Option<WaterColour>,
}

/// Why conditions can't be logged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum ConditionsError {
    /// Air that is too cold or too warm for anywhere people fish.
    #[error("air of {} C", f64::from(*.0) / 10.0)]
    Air(i16),
    /// Water that would be ice or soup.
    #[error("water of {} C", f64::from(*.0) / 10.0)]
    Water(i16),
    /// More than eight eighths.
    #[error("{0} eighths of cloud")]
    Cloud(u8),
    /// Calm with a direction.
    #[error("a calm with a direction")]
    CalmFromSomewhere,
}

impl Conditions {
    /// Checks all of them.
    pub fn checked(self) -> Result<Self, ConditionsError> {
        match self {
            Self { air: Some(t), .. } if !(-300..=450).contains(&t) => Err(ConditionsError::Air(t)),
            Self { water: Some(t), .. } if !(0..=350).contains(&t) => Err(ConditionsError::Water(t)),
            Self { cloud: Some(o), .. } if o > 8 => Err(ConditionsError::Cloud(o)),
            Self { wind: Some(WindStrength::Calm), wind_from: Some(_), .. } => {
                Err(ConditionsError::CalmFromSomewhere)
            }
            fine => Ok(fine),
        }
    }
}

/// A question, in the order in which they are asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Question {
    /// Water temperature.
    Water,
    /// Air temperature.
    Air,
    /// Wind strength.
    Wind,
    /// Wind direction.
    WindFrom,
    /// Cloud.
    Cloud,
    /// Colour of the water.
    Colour,
}

/// The answer of a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "uniffi", derive(uniffi::Enum))]
#[serde(rename_all = "snake_case")]
pub enum Answer {
    /// Water temperature, tenths of a degree.
    Water(i16),
    /// Air temperature, tenths of a degree.
    Air(i16),
    /// Wind strength.
    Wind(WindStrength),
    /// Wind direction.
    WindFrom(WindFrom),
    /// Oktas.
    Cloud(u8),
    /// Colour.
    Colour(WaterColour),
}

const QUESTIONS: [Question; 6] =
    [Question::Water, Question::Air, Question::Wind, Question::WindFrom, Question::Cloud, Question::Colour];

/// The next question: not yet answered, not skipped, and one that makes sense (a calm has no direction).
pub fn next_question(so_far: &Conditions, skipped: &[Question]) -> Option<Question> {
    QUESTIONS.into_iter().filter(|question| !skipped.contains(question)).find(|question| match question {
        Question::Water => so_far.water.is_none(),
        Question::Air => so_far.air.is_none(),
        Question::Wind => so_far.wind.is_none(),
        Question::WindFrom => so_far.wind_from.is_none() && so_far.wind != Some(WindStrength::Calm),
        Question::Cloud => so_far.cloud.is_none(),
        Question::Colour => so_far.colour.is_none(),
    })
}

/// Nine temperatures a degree apart around the last known one (in tenths), limited to the range.
fn about(last: Option<i16>, start: i16, low: i16, high: i16) -> Vec<i16> {
    let whole = last.unwrap_or(start).div_euclid(10) * 10;
    let middle = whole.clamp(low + 40, high - 40);
    (-4..=4).map(|step| middle + 10 * step).collect()
}

/// The keys for a question; temperatures are around those last logged, or without one around those of a cold
/// lake.
pub fn answers(question: Question, last: &Conditions) -> Vec<Answer> {
    match question {
        Question::Water => about(last.water, 60, 0, 350).into_iter().map(Answer::Water).collect(),
        Question::Air => about(last.air, 50, -300, 450).into_iter().map(Answer::Air).collect(),
        Question::Wind => WindStrength::ALL.map(Answer::Wind).to_vec(),
        Question::WindFrom => WindFrom::ALL.map(Answer::WindFrom).to_vec(),
        Question::Cloud => (0..=4).map(|quarter| Answer::Cloud(2 * quarter)).collect(),
        Question::Colour => WaterColour::ALL.map(Answer::Colour).to_vec(),
    }
}

/// The conditions after one key. The key for calm removes the direction.
pub fn with(so_far: Conditions, answer: Answer) -> Result<Conditions, ConditionsError> {
    let mut next = so_far;
    match answer {
        Answer::Water(t) => next.water = Some(t),
        Answer::Air(t) => next.air = Some(t),
        Answer::Wind(strength) => {
            next.wind = Some(strength);
            if strength == WindStrength::Calm {
                next.wind_from = None;
            }
        }
        Answer::WindFrom(from) => next.wind_from = Some(from),
        Answer::Cloud(oktas) => next.cloud = Some(oktas),
        Answer::Colour(colour) => next.colour = Some(colour),
    }
    next.checked()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn six_taps_log_everything_and_one_less_in_a_calm() {
        let mut so_far = Conditions::default();
        let mut taps = 0;
        while let Some(question) = next_question(&so_far, &[]) {
            so_far = with(so_far, answers(question, &Conditions::default())[1]).unwrap();
            taps += 1;
        }
        assert_eq!((taps, so_far.wind), (6, Some(WindStrength::Light)));
        let calm = with(so_far, Answer::Wind(WindStrength::Calm)).unwrap();
        assert_eq!((calm.wind_from, next_question(&calm, &[])), (None, None));
    }

    #[test]
    fn anything_can_be_skipped() {
        assert_eq!(
            next_question(&Conditions::default(), &[Question::Water, Question::Air]),
            Some(Question::Wind)
        );
        assert_eq!(next_question(&Conditions::default(), &QUESTIONS), None);
    }

    #[test]
    fn temperatures_are_around_the_last_one_and_stay_within_range() {
        let last = Conditions { water: Some(57), ..Conditions::default() };
        let keys = answers(Question::Water, &last);
        assert_eq!((keys[0], keys[4], keys[8]), (Answer::Water(10), Answer::Water(50), Answer::Water(90)));
        let frozen = Conditions { water: Some(3), air: Some(-295), ..Conditions::default() };
        for key in answers(Question::Water, &frozen).into_iter().chain(answers(Question::Air, &frozen)) {
            assert!(with(Conditions::default(), key).is_ok(), "{key:?}");
        }
    }

    #[test]
    fn impossible_conditions_are_refused() {
        let refused = |c: Conditions| c.checked().unwrap_err();
        let none = Conditions::default();
        assert_eq!(refused(Conditions { water: Some(-10), ..none }), ConditionsError::Water(-10));
        assert_eq!(refused(Conditions { air: Some(900), ..none }), ConditionsError::Air(900));
        assert_eq!(refused(Conditions { cloud: Some(9), ..none }), ConditionsError::Cloud(9));
        let calm = Conditions { wind: Some(WindStrength::Calm), wind_from: Some(WindFrom::Sw), ..none };
        assert_eq!(refused(calm), ConditionsError::CalmFromSomewhere);
    }

    #[test]
    fn the_eight_points_are_45_degrees_apart() {
        assert_eq!(
            WindFrom::ALL.map(WindFrom::degrees),
            [0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0]
        );
    }
}
