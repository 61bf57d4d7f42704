//! Second methods: published ways to the same figures, which the app does not use and with which its own are compared.
//! Nothing here is shipped.

pub mod meeus;
pub mod negative_binomial;
