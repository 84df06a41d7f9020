//! Bolts as people write them, metric or inch: "M16 8.8", "5/8-11 grade 5".
//!
//! Not here: the strengths (`iso_898_1`, `sae_j429`), how hard to tighten (`mechanics`).

use quantities::{Force, Length, Pressure, Source};
use uom::si::f64::Area;
use uom::si::length::millimeter;

use crate::{iso_898_1, sae_j429};

/// A thread: coarse series, metric or unified.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Thread {
    /// As a drawing writes it.
    pub name: &'static str,
    /// Nominal diameter.
    pub diameter: Length,
    /// Pitch.
    pub pitch: Length,
    /// Tensile stress area.
    pub stress_area: Area,
    /// Where its figures come from.
    pub source: Source,
}

/// A bolt: thread and grade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bolt {
    /// The thread.
    pub thread: &'static Thread,
    /// Property class or grade.
    pub grade: &'static str,
    /// Stress that it must bear without lasting stretch.
    pub proof_stress: Pressure,
    /// Where the proof stress comes from.
    pub source: Source,
}

impl Bolt {
    /// Proof stress times stress area.
    pub fn proof_load(&self) -> Force {
        self.proof_stress * self.thread.stress_area
    }
}

/// Why a text is no bolt that is held.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum BoltError {
    /// No such thread.
    #[error(
        "no thread such as “{0}” is held; held are the coarse threads M6 to M27, M30, M36 and 1/4-20 to 1 1/2-6"
    )]
    Thread(String),
    /// No such grade.
    #[error(
        "no grade such as “{0}” is held; held are 8.8, 10.9 and 12.9, and grade 2, grade 5 and grade 8"
    )]
    Grade(String),
}

/// Words that say nothing the rest does not.
const NOISE: [&str; 11] =
    ["grade", "gr.", "gr", "class", "cl.", "cl", "sae", "iso", "unc", "bolts", "bolt"];

/// The thread and grade in a text such as "M16 8.8", "M16x2 cl 10.9" or "5/8-11 UNC grade 5".
///
/// # Errors
/// [`BoltError`]: a thread or a grade that is not held; a fine thread is not.
/// # Example
/// ```
/// use tables::bolts::bolt;
/// use uom::si::force::kilonewton;
/// let load = bolt("M16 8.8")?.proof_load();
/// assert_eq!(format!("{:.0}", load.get::<kilonewton>()), "91");
/// assert_eq!(bolt("5/8-11 grade 5")?.grade, "grade 5");
/// # Ok::<(), tables::bolts::BoltError>(())
/// ```
pub fn bolt(text: &str) -> Result<Bolt, BoltError> {
    let pieces = pieces(text);
    let (thread, rest) =
        first_thread(&pieces).ok_or_else(|| BoltError::Thread(text.trim().into()))?;
    let metric = iso_898_1::THREADS.iter().any(|held| held.name == thread.name);
    let found = match rest {
        [grade] if metric => iso_898_1::proof_stress(grade, thread.diameter),
        [grade] => sae_j429::proof_stress(grade, thread.diameter),
        _ => None,
    };
    let (grade, proof_stress) = found.ok_or_else(|| BoltError::Grade(rest.join(" ")))?;
    let source = if metric { iso_898_1::SOURCE } else { sae_j429::SOURCE };
    Ok(Bolt { thread, grade, proof_stress, source })
}

/// The thread of that name alone: "M16", "M16x2", "5/8-11".
pub fn thread(text: &str) -> Option<&'static Thread> {
    match first_thread(&pieces(text)) {
        Some((thread, [])) => Some(thread),
        _ => None,
    }
}

/// Every thread held, metric first.
pub fn threads() -> impl Iterator<Item = &'static Thread> {
    iso_898_1::THREADS.iter().chain(&sae_j429::THREADS)
}

/// The text without noise, cut at spaces and at the marks that part a size from its pitch.
fn pieces(text: &str) -> Vec<String> {
    let plain = text.to_lowercase().replace(['-', '–', '×', '"', ','], " ");
    let plain = plain.strip_prefix("m ").map_or(plain.clone(), |rest| format!("m{rest}"));
    let metric = plain.starts_with('m');
    let cut = |c: char| c.is_whitespace() || (metric && c == 'x');
    let words = plain
        .split(cut)
        .map(|word| NOISE.iter().find_map(|n| word.strip_prefix(n)).unwrap_or(word));
    words.filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// The thread that the pieces begin with, and what is left of them.
fn first_thread(pieces: &[String]) -> Option<(&'static Thread, &[String])> {
    metric_thread(pieces).or_else(|| unified_thread(pieces))
}

/// "m16" or, with its pitch, "m16" and "2".
fn metric_thread(pieces: &[String]) -> Option<(&'static Thread, &[String])> {
    let (first, rest) = pieces.split_first()?;
    let thread = iso_898_1::THREADS.iter().find(|held| held.name.to_lowercase() == *first)?;
    let pitch_mm = thread.pitch.get::<millimeter>();
    let is_pitch = |piece: &String| piece.parse().is_ok_and(|p: f64| (p - pitch_mm).abs() < 1e-6);
    match rest.split_first() {
        Some((pitch, rest)) if is_pitch(pitch) => Some((thread, rest)),
        _ => Some((thread, rest)),
    }
}

/// "5/8" and "11", or "1", "1/8" and "7".
fn unified_thread(pieces: &[String]) -> Option<(&'static Thread, &[String])> {
    sae_j429::THREADS.iter().find_map(|held| {
        let name: Vec<&str> = held.name.split([' ', '-']).collect();
        let begins = pieces.len() >= name.len() && pieces.iter().zip(&name).all(|(p, n)| p == n);
        begins.then(|| (held, &pieces[name.len()..]))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bolts_are_read_as_people_write_them() {
        for (text, thread, grade) in [
            ("M16 8.8", "M16", "8.8"),
            ("m 16 - 8.8", "M16", "8.8"),
            ("M16x2 10.9", "M16", "10.9"),
            ("M10 × 1.5 class 12.9", "M10", "12.9"),
            ("M12, cl.10.9", "M12", "10.9"),
            ("5/8-11 grade 5", "5/8-11", "grade 5"),
            ("5/8-11 UNC gr. 8", "5/8-11", "grade 8"),
            ("1 1/8-7 SAE grade 2", "1 1/8-7", "grade 2"),
            ("1-1/8-7 gr5", "1 1/8-7", "grade 5"),
            ("1-8 grade 8", "1-8", "grade 8"),
        ] {
            let bolt = bolt(text).unwrap_or_else(|error| panic!("{text}: {error}"));
            assert_eq!((bolt.thread.name, bolt.grade), (thread, grade), "{text}");
        }
        assert_eq!(super::thread("M16x2").unwrap().name, "M16");
        assert_eq!(super::thread("1-8").unwrap().name, "1-8");
    }

    #[test]
    fn what_is_not_held_is_refused() {
        for text in ["", "M17 8.8", "M16x1.5 8.8", "5/8-18 grade 5", "5/8 grade 5", "8.8", "M"] {
            assert!(bolt(text).is_err(), "{text}");
        }
        assert!(matches!(bolt("M16x1.5 8.8"), Err(BoltError::Grade(_))));
        assert_eq!(bolt("M16 4.6").unwrap_err(), BoltError::Grade("4.6".into()));
        assert_eq!(bolt("M16 grade 5").unwrap_err(), BoltError::Grade("5".into()));
    }

    proptest::proptest! {
        #[test]
        fn any_text_is_answered(text in "\\PC{0,16}|[mM0-9/x. -]{0,12}") {
            let _ = bolt(&text);
        }
    }
}
