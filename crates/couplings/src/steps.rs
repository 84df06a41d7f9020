//! The steps that kinds share. A kind puts them in its own order, between its own.

use crate::step::{End, Stage, Step, When};

pub const LOCKOUT: Step = Step::new(
    "lockout",
    Stage::Machines,
    "Lock out, tag and prove dead: {driver} and {driven}",
    "Shut down, isolate, lock and tag every source of energy; release or hold what is stored \
     (back-flow, springs, hanging loads, drive capacitors); try the start. Each person puts on \
     their own lock. Local codes and the site’s permit rule.",
)
.hold("Everyone on the job has a lock on; the holder of the permit agrees.")
.needs(&["locks and tags", "permit", "voltage tester"]);

pub const MACHINE_CHECK: Step = Step::new(
    "machine-check",
    Stage::Machines,
    "Check bases, soft foot, pipe strain and shaft runout",
    "Put right now what would not let the line-up hold. Indicator on each bare shaft near the \
     coupling, one full turn; a bent shaft cannot be lined up.",
)
.needs(&["dial indicator with base", "feeler gauges"]);

pub const MAGNETIC_CENTRE: Step = Step::new(
    "magnetic-centre",
    Stage::Machines,
    "Mark both float limits and the {driver}’s magnetic centre",
    "Push the rotor to each end of its float and mark the shaft. The maker’s mark or an uncoupled \
     run gives the magnetic centre. The gap is set with the rotor there.",
)
.when(When::EndFloat)
.needs(&["scriber", "rule"]);

pub const COUPLING_CHECK: Step = Step::new(
    "coupling-check",
    Stage::Coupling,
    "Check the coupling against its sheet and against the drive",
    "Size, bores, rating, speed, parts all there, match marks. Lay the parts out in order; keep \
     what was balanced together together.",
)
.needs(&["maker’s sheet"]);

pub const MEASURE: Step = Step::new(
    "measure",
    Stage::Sizes,
    "Measure bores, shafts and keys; stone off burrs first",
    "Three stations along, two directions across, parts and gauges at one temperature. Key: snug \
     at the sides, clear on top, edges broken so that it does not ride in the corner of the seat.",
)
.needs(&["micrometers and bore gauge, checked", "fine stone", "clean cloth", "thermometer"]);

pub const FIT: Step = Step::new(
    "fit",
    Stage::Fit,
    "Agree the fit of both hubs before either is heated",
    "{driver} hub {fit.driver.interference}, {driven} hub {fit.driven.interference}, against the fit \
     that was asked for. A hub too loose or too tight is put right now, not when it is hot.",
)
.hold("Whoever is responsible for the fit agrees before a hub is heated or slid on.");

pub const SHIELD: Step = Step::new(
    "shield",
    Stage::Heat,
    "Shield seals and rubber from the hot hubs; set the stops",
    "Push all soft parts well back and cover them with wet cloth or a heat screen, water kept off \
     the hub. Set a stop or a gauge block for the hub’s place before anything is heated.",
)
.needs(&["heat screen or cloth", "gauge block or stop"]);

pub const HEAT_DRIVER: Step = Step::new(
    "heat-driver",
    Stage::Heat,
    "Heat {driver} hub to {heat.driver.temperature}, slide home",
    "Heat evenly, oven or induction; check the bore with a contact thermometer and a go gauge \
     that shows {heat.driver.clearance} on the diameter. Key in, one smooth push to the stop, home within \
     {heat.driver.seconds}; hold it home until it grips. If it sticks short, pull it back off at once. No steel hammer.",
)
.when(When::Hot(End::Driver))
.needs(&["oven or induction heater", "contact thermometer", "heat-proof gloves", "face shield"]);

pub const HEAT_DRIVEN: Step = Step::new(
    "heat-driven",
    Stage::Heat,
    "Heat {driven} hub to {heat.driven.temperature}, slide home",
    "As the first: even heat, bore checked hot, {heat.driven.clearance} on the diameter, key in, one smooth \
     push to the stop, home within {heat.driven.seconds}, held home until it grips.",
)
.when(When::Hot(End::Driven))
.needs(&["oven or induction heater", "contact thermometer", "heat-proof gloves", "face shield"]);

pub const SLIP_DRIVER: Step = Step::new(
    "slip-driver",
    Stage::Heat,
    "Slide the {driver} hub on, cold, key in",
    "Clean, a film of oil, to its place by hand. Leave the set screw slack until the gap is set.",
)
.when(When::Slip(End::Driver))
.needs(&["light oil", "clean cloth"]);

pub const SLIP_DRIVEN: Step = Step::new(
    "slip-driven",
    Stage::Heat,
    "Slide the {driven} hub on, cold, key in",
    "Clean, a film of oil, to its place by hand. Leave the set screw slack until the gap is set.",
)
.when(When::Slip(End::Driven))
.needs(&["light oil", "clean cloth"]);

pub const COOL: Step = Step::new(
    "cool",
    Stage::Heat,
    "Let the hubs cool in still air; check that none drew away",
    "Never quench. When a hand can rest on them: place of each hub on its shaft, and its runout \
     at rim and face.",
)
.needs(&["depth gauge", "dial indicator with base"]);

pub const GAP: Step = Step::new(
    "gap",
    Stage::Gap,
    "Set the gap: {gap.faces}, measured at four points",
    "Hubs cool, rotors where they run (thrust taken up, {driver} on its magnetic centre). Quarter \
     turns apart, both shafts turned together. Then tighten set screws, the one over the key \
     first, and measure again.",
)
.needs(&["gauge block or inside micrometer", "feeler gauges"]);

pub const LINEUP: Step = Step::new(
    "lineup",
    Stage::Lineup,
    "Line up for running: {lineup.moves}",
    "{lineup.packs}To the machines’ tolerance, not to what the coupling would bear; cold target \
     with the growth taken in. Feet tight, then read again in full.",
)
.hold("Someone other than the doer reads the line-up again and agrees.")
.needs(&["line-up gear, checked", "shims", "torque wrench"]);

pub const TORQUE: Step = Step::new(
    "torque",
    Stage::Closeup,
    "Tighten across the circle in stages to {closeup.torque}",
    "Hold the bolt, turn the nut. Snug, then in stages in the order of the drawing, then once \
     round until no nut moves. Lock the nuts as the sheet says and mark each.",
)
.needs(&["torque wrench in date", "ring spanner", "paint marker"]);

pub const FILL: Step = Step::new(
    "fill",
    Stage::Closeup,
    "Fill with {closeup.grease}; refit both plugs",
    "Two opposite plugs out, pump slowly at the lower until clean grease shows at the upper. Oil: \
     to the lower edge of the plug at the angle on the sheet.",
)
.needs(&["grease gun, clean", "plugs and washers"]);

pub const GUARD: Step = Step::new(
    "guard",
    Stage::Closeup,
    "Turn one full turn by hand, tools out, then refit the guard",
    "It turns freely, nothing rubs, no tool or rag is left. The guard clears every turning part \
     and is bolted up before a lock comes off.",
)
.needs(&["guard and its bolts"]);

pub const FIRST_RUN: Step = Step::new(
    "first-run",
    Stage::Running,
    "First run: listen, look, feel for heat and vibration",
    "Locks off by those who put them on; people clear of the plane of the coupling; direction \
     proved. After a few minutes stop, lock out, look for leaks, loose bolts and hot parts.",
)
.needs(&["vibration meter", "thermometer"]);

pub const HOT_CHECK: Step = Step::new(
    "hot-check",
    Stage::Running,
    "Check the line-up hot, and write the record",
    "When temperatures stand still: stop, lock out, read the line-up at once, correct the cold \
     target if growth was not what was reckoned. Record gap, line-up, torque, lubricant, \
     vibration, names.",
)
.needs(&["line-up gear", "thermometer"]);

pub const OFF_LOCKOUT: Step = Step::new(
    "off-lockout",
    Stage::Removal,
    "Lock out, tag and prove dead: {driver} and {driven}",
    "Every source of energy, and what is stored: back-flow, hanging loads, a twist left in the \
     shafts. Block the shafts. Local codes and the site’s permit rule.",
)
.hold("Everyone on the job has a lock on; the holder of the permit agrees.")
.needs(&["locks and tags", "permit", "voltage tester"]);

pub const OFF_GUARD: Step = Step::new(
    "off-guard",
    Stage::Removal,
    "Take off the guard; look before anything is touched",
    "Thrown grease, rust-red dust, heat colour, loose or missing bolts, hub moved on its shaft: \
     write it down and take a picture now.",
)
.needs(&["camera", "torch"]);

pub const OFF_RECORD: Step = Step::new(
    "off-record",
    Stage::Removal,
    "Record gap, place of each hub and line-up; match-mark all",
    "Gap at four points, hub face to shaft end or to a mark, line-up as found. Mark flanges, \
     hubs and shafts so that all goes back as it was. The sheet may be lost; this is then the \
     only truth.",
)
.needs(&["feeler gauges", "depth gauge", "line-up gear", "marker or punch"]);

pub const OFF_SPACER: Step = Step::new(
    "off-spacer",
    Stage::Removal,
    "Sling the spacer, take out its bolts, lift it out",
    "Sling tight before the last bolts are out; aligning pins at both ends.",
)
.needs(&["soft sling", "aligning pins"]);

pub const OFF_CLEAR: Step = Step::new(
    "off-clear",
    Stage::Removal,
    "Move the {moves} away to make room; keep its shims in order",
    "Tie the shims of each foot together and label them. No room for the puller means no pull \
     that is square.",
)
.needs(&["wire and labels", "jack screws"]);

pub const OFF_FASTENINGS: Step = Step::new(
    "off-fastenings",
    Stage::Removal,
    "Find and remove set screws, pins, shaft nuts and plates",
    "Look under paint for a second screw and for a pin through the hub. Clean the shaft in front \
     of the hub, stone off burrs, oil it.",
)
.needs(&["hexagon keys", "fine stone", "penetrating oil"]);

pub const OFF_RIG: Step = Step::new(
    "off-rig",
    Stage::Removal,
    "Rig the puller square; stop plate or nut, sling, screen",
    "Puller holes with bar and screw first, then three jaws, two jaws last. Capacity at least one \
     and a half times the pull expected. Shaft centre protected; the pull goes into the shaft \
     end, never through the bearings. The sling takes the hub’s weight.",
)
.hold("Whoever is in charge of the lift sees stop, sling and screen in place.")
.needs(&["puller", "sling", "stop plate or shaft nut", "puller blanket", "face shield"]);

pub const OFF_DRIVER: Step = Step::new(
    "off-driver",
    Stage::Removal,
    "Pull the {driver} hub: {removal.driver.force} expected, cold",
    "Load the puller first. {removal.driver.starting} Over the puller’s capacity: stop, let the \
     load down, think again. Never leave it loaded.",
)
.when(When::Hot(End::Driver))
.needs(&["puller with gauge", "heat source, where allowed", "thermometer"]);

pub const OFF_DRIVEN: Step = Step::new(
    "off-driven",
    Stage::Removal,
    "Pull the {driven} hub: {removal.driven.force} expected, cold",
    "As the first. {removal.driven.starting}",
)
.when(When::Hot(End::Driven))
.needs(&["puller with gauge", "heat source, where allowed", "thermometer"]);

pub const OFF_SLIDE_DRIVER: Step = Step::new(
    "off-slide-driver",
    Stage::Removal,
    "Slide the {driver} hub off by hand",
    "It has clearance. If it sticks it has fretted on: penetrating oil, time, then the puller.",
)
.when(When::Slip(End::Driver))
.needs(&["penetrating oil"]);

pub const OFF_SLIDE_DRIVEN: Step = Step::new(
    "off-slide-driven",
    Stage::Removal,
    "Slide the {driven} hub off by hand",
    "It has clearance. If it sticks it has fretted on: penetrating oil, time, then the puller.",
)
.when(When::Slip(End::Driven))
.needs(&["penetrating oil"]);

pub const OFF_SHAFTS: Step = Step::new(
    "off-shafts",
    Stage::Removal,
    "Look over shafts, keys and bores; measure what goes back",
    "Galling, fretting, cracks in the corners of the key seat. A shaft that was heated gets its \
     runout checked.",
)
.needs(&["micrometers", "crack-detection dye", "dial indicator with base"]);

pub const OFF_KEEP: Step = Step::new(
    "off-keep",
    Stage::Removal,
    "Cover shaft ends, tag the parts, write the record",
    "Parts of one coupling stay together. Locks stay on until the guard is back or the shaft ends \
     are covered.",
)
.needs(&["covers", "tags", "rust preventive"]);
