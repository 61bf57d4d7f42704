use super::*;
use std::collections::BTreeSet;
use std::path::PathBuf;

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn cases() -> Vec<Value> {
    let mut all = Vec::new();
    for file in std::fs::read_dir(root().join("tests/reference")).unwrap() {
        let path = file.unwrap().path();
        if path.extension().is_some_and(|x| x == "json") {
            let data: Value = serde_json::from_slice(&std::fs::read(path).unwrap()).unwrap();
            all.extend(data["cases"].as_array().unwrap().iter().cloned());
        }
    }
    assert!(all.len() > 100, "only {} cases were found", all.len());
    all
}

/// The sources of the core that ship: without folders and modules of tests, and without comments.
fn shipped(folder: &Path, into: &mut Vec<String>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        if path.is_dir() && name != "tests" && name != "benches" {
            shipped(&path, into);
        } else if path.extension().is_some_and(|x| x == "rs") && name != "tests.rs" {
            let text = std::fs::read_to_string(&path).unwrap();
            let ships = text.split("#[cfg(test)]\nmod tests {").next().unwrap();
            let code: Vec<&str> = ships.lines().filter(|line| !line.trim_start().starts_with("//")).collect();
            into.push(code.join("\n"));
        }
    }
}

/// A function is called where its name comes before a bracket and not after `fn`, or is passed on by name.
fn is_called(name: &str, code: &str) -> bool {
    code.match_indices(name).any(|(at, _)| {
        let (before, after) = (&code[..at], &code[at + name.len()..]);
        let whole = !before.ends_with(|c: char| c.is_alphanumeric() || c == '_');
        whole && !before.ends_with("fn ") && after.starts_with(['(', ')'])
    })
}

#[test]
fn every_case_checks_a_function_that_ships_or_a_second_method() {
    let mut sources = Vec::new();
    shipped(&root().join("core"), &mut sources);
    let names: BTreeSet<String> = cases().iter().map(|case| checks(case).unwrap().to_owned()).collect();
    for full in names.iter().filter(|full| !full.starts_with(SECOND_METHODS)) {
        let name = full.rsplit("::").next().unwrap();
        assert!(
            sources.iter().any(|code| code.contains(&format!("pub fn {name}("))),
            "{full} is no function"
        );
        assert!(sources.iter().any(|code| is_called(name, code)), "{full} is called by nothing that ships");
    }
}

#[test]
fn a_function_only_defined_is_not_called() {
    assert!(!is_called("area", "pub fn area(x: f64) -> f64 { other_area(x) }"));
    assert!(is_called("area", "let sum = area(2.0);") && is_called("area", "rings.map(area)"));
}

#[test]
fn figures_recalled_from_memory_are_marked() {
    for case in cases().iter().filter(|case| case["published_figures"].is_string()) {
        let recalled = case["published_figures"].as_str().unwrap().contains("recalled from memory");
        assert!(!recalled || case["from_memory"] == true, "{}", case["id"]);
    }
}

#[test]
fn a_case_that_does_not_say_what_it_checks_fails() {
    let case = cases().into_iter().find(|case| case["id"] == "garwood_1").unwrap();
    assert!(run_case("poisson_rates", &case).0);
    let mut silent = case.clone();
    silent.as_object_mut().unwrap().remove("checks");
    assert!(!run_case("poisson_rates", &silent).0);
    let mut printed = case;
    printed["published"]["ci95"][1] = serde_json::json!(5.59);
    assert!(!run_case("poisson_rates", &printed).0);
}
