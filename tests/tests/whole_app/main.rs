//! The whole app over the real core and store: one binary, so that the core is linked once. Tests that need a process of
//! their own stand beside it.

mod clocks;
mod demo_day;
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
mod swap;
mod swim_geojson_ogr;
