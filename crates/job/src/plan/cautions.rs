//! What to heed before anything else, and before the stage it belongs to.

use couplings::kind::CHILLED;
use quantities::Physical;

use super::{Caution, Context};
use crate::Stage;
use crate::file::End;

/// Cautions before everything first, then by stage.
pub(super) fn cautions(cx: &Context) -> Vec<Caution> {
    let mut all = vec![first(cx)];
    if !cx.file.site.wear.is_empty() {
        let wear = format!("Plant rule, worn by all: {}.", cx.file.site.wear.join(", "));
        all.push(Caution { stage: None, orders: vec![wear] });
    }
    let common = couplings::kind::common_cautions().iter();
    let own = cx.kind.map_or(&[] as &[couplings::kind::Caution], couplings::Kind::cautions);
    let told: Vec<&couplings::kind::Caution> = common.chain(own).collect();
    let chilled = is_chilled(cx);
    for stage in Stage::ALL {
        let is_here = |told: &&&couplings::kind::Caution| {
            told.stage == stage && (chilled || !told.heated_by.contains(&CHILLED))
        };
        let mut here: Vec<_> = told.iter().filter(is_here).collect();
        // Those of the way that was chosen come first.
        let chosen = |way: &&str| *way == CHILLED || *way == cx.file.heat.method;
        here.sort_by_key(|told| !told.heated_by.iter().any(chosen));
        let fill = |text| couplings::step::fill(text, |blank| mass(cx, blank));
        let orders: Vec<String> = here.iter().map(|told| fill(told.text)).collect();
        for three in orders.chunks(3) {
            all.push(Caution { stage: Some(stage), orders: three.to_vec() });
        }
    }
    all
}

/// Lock and prove dead, on both sides, with what this job names.
fn first(cx: &Context) -> Caution {
    let mut points = Vec::new();
    for end in End::BOTH {
        points.extend(cx.file.machines.at(end).isolate.iter().map(String::as_str));
    }
    let lock = if points.is_empty() {
        "Lock out and prove dead, driver and driven machine; let down stored energy.".to_owned()
    } else {
        format!("Lock out and prove dead: {}.", points.join(", "))
    };
    let burns = hot(cx).then(|| {
        "Burns: gloves, sleeves, face shield. Walk the way with the cold hub once.".to_owned()
    });
    let rules = "Local rules, the permit and the maker’s manual come before this card.".to_owned();
    Caution {
        stage: None,
        orders: [Some(lock), burns, Some(rules)].into_iter().flatten().collect(),
    }
}

/// What stands in the blanks of a caution.
fn mass(cx: &Context, blank: &str) -> Option<String> {
    let total = cx.file.coupling.sheet.masses.total.as_ref().filter(|_| blank == "coupling.mass");
    total.map(|mass| mass.shown().show(cx.system))
}

/// True for a shaft below freezing.
fn is_chilled(cx: &Context) -> bool {
    let shaft = cx.file.heat.shaft_temperature.as_ref();
    shaft.is_some_and(|shaft| shaft.value().si() < 273.15)
}

fn hot(cx: &Context) -> bool {
    End::BOTH.iter().any(|end| cx.heat(*end).is_some())
}
