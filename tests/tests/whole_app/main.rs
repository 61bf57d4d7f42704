//! The whole app with the real core and store: one binary, so that the core is linked once. Tests that need a
//! process of their own are beside it.

mod clocks;
mod demo_day;
mod every_language;
mod every_tap;
mod feeder_day;
mod fuzz_kept;
mod killed;
mod match_day;
mod neighbours_day;
mod older_reader;
mod op_file;
mod plan_day;
mod r_agreement;
mod report_print;
mod safekeeping;
mod seasons;
mod second_process;
mod section_day;
mod shared_day;
mod spoken;
mod swap;
mod swim_geojson_ogr;
mod swim_pictures;
