//! Replays the corpus and every crasher found by fuzzing, and does a short seeded run of each target.

use restwater_tests::fuzz::{Mutator, TARGETS, kept_inputs, seed_op_file};

#[test]
fn kept_inputs_and_a_short_run_break_no_promise() -> std::io::Result<()> {
    for (name, target) in TARGETS {
        let kept = kept_inputs(name)?;
        assert!(!kept.is_empty(), "{name} has a corpus");
        for (_, input) in &kept {
            target(input);
        }
        let mut inputs: Vec<Vec<u8>> = kept.into_iter().map(|(_, input)| input).collect();
        inputs.push(seed_op_file(1));
        let mut mutator = Mutator::new(1, inputs);
        for _ in 0..300 {
            target(&mutator.make());
        }
    }
    Ok(())
}
