//! The bench at home: hooklengths, cutting plans, pop-up balance, fall to depth.
