//! Did a change matter: exact tests, rates, multiplicity, alternation plans.
