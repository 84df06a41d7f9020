//! ARCHITECTURE.md has a row for every crate, | `mechanics` | fit, heat, … | `tables` |, and no
//! crate uses one that its row does not grant. Backticks in those rows mark crates only. And what
//! it says of kinds holds: no code names one, but its own file and its drawing.
#![expect(clippy::disallowed_methods, reason = "this test reads the sources")]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

#[test]
fn the_map_is_true() {
    let mut grants = BTreeMap::<String, BTreeSet<String>>::new();
    let map = include_str!("../../../ARCHITECTURE.md");
    for row in map.lines().filter(|line| line.starts_with("| `")) {
        let mut names = row.split('`').skip(1).step_by(2).map(str::to_owned);
        let name = names.next().unwrap();
        let direct: BTreeSet<String> = names.collect();
        let further = direct.iter().flat_map(|used| grants.get(used).expect("rows stand in order"));
        let granted = direct.iter().chain(further).cloned().collect();
        grants.insert(name, granted);
    }
    for member in cargo_metadata::MetadataCommand::new().no_deps().exec().unwrap().packages {
        let granted = grants.remove(member.name.as_str());
        let granted = granted.unwrap_or_else(|| panic!("{} has no row", member.name));
        for used in member.dependencies.iter().filter(|used| used.path.is_some()) {
            assert!(granted.contains(&used.name), "{} must not use {}", member.name, used.name);
        }
    }
    assert!(grants.is_empty(), "rows without a crate: {grants:?}");
}

/// Adding a kind is one file: code elsewhere knows of none by its name.
#[test]
fn a_kind_is_named_in_its_own_file_and_where_it_is_drawn() {
    let crates = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap();
    let mut sources = Vec::new();
    for folder in std::fs::read_dir(crates).unwrap() {
        collect(&folder.unwrap().path().join("src"), &mut sources);
    }
    assert!(sources.len() > 300, "{} sources", sources.len());
    let own = ["couplings/src/kinds/", "figures/src/of_plan/section.rs", "figures/src/section/"];
    for source in sources {
        let name = source.strip_prefix(crates).unwrap().display().to_string();
        if own.iter().any(|place| name.starts_with(place)) || name.contains("tests") {
            continue;
        }
        let text = std::fs::read_to_string(&source).unwrap();
        let code = text.split("#[cfg(test)]\nmod tests {").next().unwrap();
        for line in code.lines().filter(|line| !line.trim_start().starts_with("//")) {
            for kind in couplings::kinds().iter().filter(|kind| kind.name() != "other") {
                let quoted = format!("\"{}\"", kind.name());
                assert!(!line.contains(&quoted), "{name} knows of the kind {quoted}: {line}");
            }
        }
    }
}

fn collect(folder: &Path, sources: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let path = entry.path();
        if path.is_dir() {
            collect(&path, sources);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            sources.push(path);
        }
    }
}
