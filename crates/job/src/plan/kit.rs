//! What to bring: tools and supplies, worked out for this job.

use quantities::{Kind, Length, System, Torque, Value};
use tables::tools::{bore_gauge_for, feelers, micrometer_for, torque_wrench_for};

use super::{Context, KitItem, Step, lineup as line_up};
use crate::file::End;

pub(super) fn kit<'a>(cx: &Context, steps: impl Iterator<Item = &'a Step>) -> Vec<KitItem> {
    let mut kit = Kit { system: cx.system_of_job(), items: Vec::new() };
    sizes(cx, &mut kit);
    let system = kit.system;
    kit.add(format!("feeler gauges, {}", feelers(system).show()), "gaps, feet");
    tightening(cx, &mut kit);
    shims(cx, &mut kit);
    pulling(cx, &mut kit);
    grease(cx, &mut kit);
    for step in steps {
        for need in &step.needs {
            kit.add(need.clone(), &super::sizes::capital(&step.stage.title().to_lowercase()));
        }
    }
    kit.items
}

struct Kit {
    system: System,
    items: Vec<KitItem>,
}

impl Kit {
    /// Adds an item; what is there already, or there more exactly, is not brought twice.
    fn add(&mut self, what: String, why: &str) {
        let lower = what.to_lowercase();
        if !self.items.iter().any(|item| item.what.to_lowercase().contains(&lower)) {
            self.items.push(KitItem { what, why: why.to_owned() });
        }
    }
}

fn sizes(cx: &Context, kit: &mut Kit) {
    for end in End::BOTH {
        let Some(size) = cx.joint_diameter(end) else { continue };
        if let Some(range) = micrometer_for(size, kit.system) {
            kit.add(format!("outside micrometer, {}", range.show()), "shafts");
        }
        if let Some(range) = bore_gauge_for(size, kit.system) {
            kit.add(
                format!("bore gauge, {}, and a setting ring or standard", range.show()),
                "bores",
            );
        }
    }
}

fn tightening(cx: &Context, kit: &mut Kit) {
    let torque: Option<Torque> = cx.closeup.torque();
    if let Some(range) = torque.and_then(|torque| torque_wrench_for(torque, kit.system)) {
        kit.add(format!("torque wrench, {}", range.show()), "coupling bolts");
    }
}

/// Every shim of the packs worked out, counted: both feet of a plane get one pack each.
fn shims(cx: &Context, kit: &mut Kit) {
    let Some(found) = &cx.lineup else { return };
    let mut counted: Vec<(Length, u32)> = Vec::new();
    for shim in line_up::foot_work(cx, found)
        .iter()
        .filter_map(|work| work.pack.as_ref())
        .flat_map(|pack| &pack.shims)
    {
        match counted.iter_mut().find(|(thickness, _)| thickness == shim) {
            Some((_, count)) => *count += 2,
            None => counted.push((*shim, 2)),
        }
    }
    counted.sort_by(|a, b| b.0.value.total_cmp(&a.0.value));
    for (shim, count) in counted {
        let thickness = Value::new(Kind::Offset, shim).show(cx.system);
        kit.add(format!("{count} shims of {thickness}"), "feet, one pack under each foot");
    }
    if !found.moves.is_empty() {
        kit.add("two dials with magnetic feet".to_owned(), "watching the feet go sideways");
    }
}

fn pulling(cx: &Context, kit: &mut Kit) {
    let classes = End::BOTH.iter().filter_map(|end| cx.removal(*end)?.puller);
    if let Some(puller) = classes.max_by_key(|puller| puller.tons) {
        kit.add(
            format!("puller of {} tons or more, square to the hub", puller.tons),
            "taking hubs off",
        );
    }
}

fn grease(cx: &Context, kit: &mut Kit) {
    let words = super::closeup::grease_words(cx);
    if !words.is_empty() {
        kit.add(words, "close-up");
    }
}
