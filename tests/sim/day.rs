//! A day of five hours on a water: casts, bites, turn-rounds.

use super::angler::Angler;
use super::feeds::Feeds;
use super::luck::{Luck, SPOTS};
use super::water::Water;

/// Minutes from all-in to all-out.
pub const DAY: f64 = 300.0;
/// Usual turn-round, minutes from wind-in to the next splash.
pub const TURN: f64 = 2.0;
/// Usual extra minutes that a bite costs.
pub const EXTRA: f64 = 3.0;

/// A cast as the angler's log has it.
#[derive(Debug, Clone, Copy)]
pub struct Cast {
    /// Minutes from the tap at the splash to the tap at the end.
    pub minutes: f64,
    /// Whether a bite ended it.
    pub bite: bool,
    /// Whether its end was tapped; if not, the next splash closed it.
    pub end_seen: bool,
    /// Whether it was in fed water.
    pub fed: bool,
}

/// The state between two casts.
#[derive(Debug, Clone)]
pub struct Bank {
    /// Minutes since all-in.
    pub clock: f64,
    /// Casts made.
    pub casts: usize,
    /// When each spot was last disturbed.
    disturbed: [f64; SPOTS],
}

impl Bank {
    /// All-in.
    pub fn all_in() -> Self {
        Self { clock: 0.0, casts: 0, disturbed: [-1e9; SPOTS] }
    }
}

/// The results of a day, or of the rest of one.
#[derive(Debug, Clone, Default)]
pub struct Catch {
    /// Bites.
    pub bites: usize,
    /// The state after the sixth bite.
    pub after_sixth: Option<Bank>,
    /// Casts as logged.
    pub log: Vec<Cast>,
    /// When each of them would have had a bite if left out long enough; the last is the cast that was out at
    /// all-out.
    pub waits: Vec<Option<f64>>,
}

/// When the angler sees that `leave` minutes are over: at the next look. The first look comes after the share
/// `first` of the time between two looks.
fn seen(leave: f64, looks: f64, first: f64) -> f64 {
    if looks > 0.0 { looks * (first + (leave / looks - first).ceil().max(0.0)) } else { leave }
}

/// Fishes from `bank` to all-out.
pub fn fish(water: &Water, luck: &Luck, angler: &mut dyn Angler, bank: Bank) -> Catch {
    fish_and_feed(water, luck, angler, bank, &mut Feeds::never())
}

/// The same for an angler who feeds.
pub fn fish_and_feed(
    water: &Water,
    luck: &Luck,
    angler: &mut dyn Angler,
    mut bank: Bank,
    feeds: &mut Feeds,
) -> Catch {
    let mut catch = Catch::default();
    while bank.clock < DAY {
        let fate = *luck.cast(bank.casts);
        let spot = bank.casts % water.spots;
        let (fed, keener) = feeds.before(bank.clock);
        angler.casts_into(fed);
        let late = |u: f64| if water.late { (5.0 + 25.0 * u) / 60.0 } else { 0.0 };
        // If the clock was started late, the angler winds in late too.
        let leave = seen(angler.leave(bank.clock), water.looks, fate.u[9]) + late(fate.u[5]);
        let wait = water.wait(luck, bank.casts, bank.clock, spot, bank.disturbed[spot], keener);
        let bite = wait.is_some_and(|w| w <= leave);
        let out = wait.filter(|_| bite).unwrap_or(leave);
        catch.waits.push(wait);
        if bank.clock + out > DAY {
            break;
        }
        let between = TURN * (0.7 + 0.6 * fate.u[3]) + if bite { EXTRA * (0.5 + fate.u[4]) } else { 0.0 };
        let end_seen = fate.u[7] >= water.forgotten;
        let logged = out - late(fate.u[5]) + if bite { late(fate.u[6]) } else { 0.0 };
        let cast = if end_seen {
            Cast { minutes: logged.max(0.0), bite, end_seen, fed }
        } else {
            Cast { minutes: out + between, bite: false, end_seen, fed }
        };
        bank.clock += out;
        bank.disturbed[spot] = bank.clock;
        bank.clock += between;
        bank.casts += 1;
        catch.bites += usize::from(bite);
        catch.log.push(cast);
        angler.learn(cast);
        feeds.after(bite);
        if bite && catch.bites == 6 {
            catch.after_sixth = Some(bank.clone());
        }
    }
    catch
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_angler_who_looks_now_and_then_sees_the_minute_at_the_next_look() {
        assert_eq!(seen(10.0, 0.0, 0.3), 10.0);
        assert_eq!(seen(10.0, 4.0, 0.25), 13.0);
        assert_eq!(seen(9.0, 4.0, 0.25), 9.0);
        assert_eq!(seen(0.5, 4.0, 0.25), 1.0);
    }
}
