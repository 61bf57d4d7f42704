//! Why something on the bench can't be done: each says what to do next.

use super::balance::BalanceError;
use super::cut_down::CutDownError;
use super::fall::FallError;
use super::hooklength::WalletError;
use super::ladder::LadderError;
use super::tie_up::TieUpError;
use super::units::{LengthError, LineLength};

/// Why something on the bench can't be done.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum BenchError {
    /// Not a cut.
    #[error("a hooklength of {from} can't be cut down to {to}")]
    NotShorter {
        /// Its length.
        from: LineLength,
        /// What it was to become.
        to: LineLength,
    },
    /// Nothing to cut down.
    #[error("nothing to cut down")]
    NothingToCutDown,
    /// Nothing to tie.
    #[error("nothing to tie")]
    NothingToTie,
    /// No such spool.
    #[error("that spool is not on the bench any more")]
    NoSuchSpool,
    /// The stop came without a start.
    #[error("no fall is being timed")]
    NotFalling,
    /// No fall was timed.
    #[error("no fall was timed yet")]
    NoFall,
    /// The fall was kept before.
    #[error("this fall is kept already")]
    FallKept,
    /// An impossible length.
    #[error(transparent)]
    Length(#[from] LengthError),
    /// The wallet can't be changed in this way.
    #[error(transparent)]
    Wallet(#[from] WalletError),
    /// No cut-down plan.
    #[error(transparent)]
    CutDown(#[from] CutDownError),
    /// No plan for the spools.
    #[error(transparent)]
    TieUp(#[from] TieUpError),
    /// No balance.
    #[error(transparent)]
    Balance(#[from] BalanceError),
    /// No depth.
    #[error(transparent)]
    Fall(#[from] FallError),
    /// No ladder.
    #[error(transparent)]
    Ladder(#[from] LadderError),
}
