//! Prints what a job file plans to.
#![expect(clippy::disallowed_methods, reason = "an example reads a file")]
fn main() {
    let path = std::env::args().nth(1).expect("a job file");
    let text = std::fs::read_to_string(path).expect("readable");
    match job::read(&text) {
        Ok(file) => {
            let system = file.system();
            let job = job::Job::from_file(&file);
            let plan = job::plan::plan_with(&job, system, job::plan::Depth::Full);
            for stage in &plan.stages {
                println!("\n== {} [{:?}] {}", stage.stage.title(), stage.verdict(), stage.summary);
                for n in &stage.numbers {
                    let shown = n.value.map(|v| v.show(system)).unwrap_or_default();
                    let bare = n.value.is_some() && n.working.is_none();
                    let bare = if bare { " | NO WORKING" } else { "" };
                    println!(
                        "  {:<34} {:<44} {shown:>24} {:?} | {} | {}{bare}",
                        n.id, n.label, n.verdict, n.second, n.settle
                    );
                }
                for m in &stage.missing {
                    println!("  MISSING {} ({})", m.what, m.place);
                }
                for note in &stage.notes {
                    println!("  note: {note}");
                }
            }
            for (name, steps) in [("on", &plan.on), ("off", &plan.off)] {
                println!("\n== {name}");
                for s in steps {
                    println!("  {} {:?} {}", s.id, s.hold, s.title_text());
                }
            }
            for k in &plan.kit {
                println!("  kit: {} ({})", k.what, k.why);
            }
            for c in &plan.cautions {
                println!("  caution {:?}: {:?}", c.stage, c.orders);
            }
        }
        Err(errors) => {
            for e in errors {
                println!("{e}");
            }
        }
    }
}
