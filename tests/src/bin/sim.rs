//! `./dev sim`: the simulated bank.
#![allow(clippy::print_stdout)]
use restwater_tests::sim::{prototype::*, share::*, water::waters};
use std::sync::Arc;
fn arg(name: &str, default: f64) -> f64 {
    std::env::args().find_map(|a| a.strip_prefix(&format!("--{name}="))?.parse().ok()).unwrap_or(default)
}
fn main() {
    let tune = Tune {
        lean: arg("lean", 0.0), lean_half: arg("half", 2.0), a0: arg("a0", 1.0), cap: arg("cap", 1e9), two: arg("two", 0.2),
        constant: arg("constant", 0.25), broad: arg("broad", 0.2), by_share: arg("share", 1.0) > 0.5, contamination: arg("eps", 0.01), even: arg("even", 1.0) > 0.5, cmean: arg("cmean", 15.0), qpow: arg("qpow", 0.0), single: arg("single", 0.05), kappa: arg("kappa", 0.0), future: arg("future", 0.0), place: arg("place", 13.0), place_sd: arg("placesd", 0.7),
    };
    let t0 = std::time::Instant::now();
    let grid = Arc::new(Grid::new(Tune{two:0.0,..tune}, 2.0, 3.0));
    let days = Days { first: arg("first", 200.0) as u64, books: arg("books", 30.0) as u64, per_book: 8 };
    let full = arg("full", 0.0) > 0.5;
    println!("{} particles", grid.len());
    let only: Vec<usize> = std::env::args().find_map(|a| Some(a.strip_prefix("--only=")?.split(',').filter_map(|x| x.parse().ok()).collect())).unwrap_or_default();
    let list: Vec<_> = waters().into_iter().enumerate().filter(|(i, _)| only.is_empty() || only.contains(i)).map(|(_, w)| w).collect();
    use restwater_core::bite::*;
    let p = SHAPE_PRIORS;
    let priors = ShapePriors { constant: arg("constant", p.constant), broad: arg("broad", p.broad), even: arg("even", p.even), two: arg("two", p.two),
        place: (arg("place", p.place.0), arg("placesd", p.place.1)), pace: (arg("pace", p.pace.0), arg("pacesd", p.pace.1)), stray: arg("stray", p.stray) };
    let shapes = Arc::new(Shapes::new(&priors));
    println!("{} shapes", shapes.count());
    let settings = Settings { explore_price: arg("price", 0.015), ..Settings::default() };
    if arg("trace", -1.0) >= 0.0 { trace(restwater_tests::sim::restwater::Restwater::new(settings, Arc::clone(&shapes), arg("a0", 0.8)), arg("trace", 0.0) as usize); return; }
    let core = arg("core", 1.0) > 0.5;
    let tables = run(&list, days, &|| if core { Box::new(restwater_tests::sim::restwater::Restwater::new(settings, Arc::clone(&shapes), arg("a0", 0.8))) as Box<dyn restwater_tests::sim::angler::Angler> } else { Box::new(Proto::new(Arc::clone(&grid), tune)) }, !full);
    for t in &tables {
        let l = &t.lines[0];
        println!("{:30} {:5.1} | {:5.1}±{:.1} | {:5.1}±{:.1} | {:5.1}±{:.1} | {:.2}", t.water.name, t.best_leave,
            100.0 * l.whole.value(), 100.0 * l.whole.error(), 100.0 * l.after_sixth.value(), 100.0 * l.after_sixth.error(),
            100.0 * l.with_book.value(), 100.0 * l.with_book.error(), l.per_hour.value());
        for l in &t.lines[1..] { print!("   {} {:.0}", l.angler, 100.0 * l.whole.value()); }
        if full { println!(); }
    }
    let worst = tables.iter().map(|t| t.lines[0].whole.value()).fold(1.0, f64::min);
    println!("worst whole {:.1}", 100.0 * worst);
    eprintln!("{:.1} s", t0.elapsed().as_secs_f64());
}
pub fn trace(planner: restwater_tests::sim::restwater::Restwater, which: usize) {
    use restwater_tests::sim::{day::*, luck::Luck, angler::*};
    struct Loud(restwater_tests::sim::restwater::Restwater, Vec<f64>);
    impl Angler for Loud {
        fn begin(&mut self, b: &[Vec<Cast>]) { self.0.begin(b); self.1.clear(); }
        fn leave(&mut self, c: f64) -> f64 { let t = self.0.leave(c); self.1.push(t); t }
        fn learn(&mut self, c: Cast) { self.0.learn(c); }
    }
    let water = waters()[which];
    let mut a = Loud(planner, vec![]);
    for d in 0..8 {
        a.begin(&[]);
        let c = fish(&water, &Luck::of_day(1000 + which as u64, d), &mut a, Bank::all_in());
        let s: Vec<String> = c.log.iter().zip(&a.1).map(|(c, t)| if c.bite { format!("{t}:{:.1}B", c.minutes) } else { format!("{t}:--") }).collect();
        println!("{} bites {}", c.bites, s.join(" "));
    }
}
