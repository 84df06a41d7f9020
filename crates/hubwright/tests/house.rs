//! ARCHITECTURE.md has a row for every crate, | `mechanics` | fit, heat, … | `tables` |, and no
//! crate uses one that its row does not grant. Backticks in those rows mark crates only.

use std::collections::{BTreeMap, BTreeSet};

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
