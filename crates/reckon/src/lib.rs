//! Calculations asked alone.
//!
//! One catalogue ([`all`]), one entry a calculation: its name, its inputs with their dimensions and
//! defaults, its outputs, what it is valid for and where it comes from. The command line, the HTTP
//! interface, their help and the guide are all made from it.
//!
//! ```
//! let asked = [("power", "90 kW"), ("speed", "1480 rpm"), ("service_factor", "1.75")];
//! let answer = reckon::reckon("torque", asked)?;
//! let torque = answer.value("design_torque").unwrap();
//! assert_eq!(torque.show(quantities::System::Metric), "1\u{202f}016 N·m");
//! # Ok::<(), reckon::ReckonError>(())
//! ```

mod answer;
mod calculation;
mod catalogue;
mod error;
mod given;
mod json;

pub use answer::{Answer, Gives, Outcome};
pub use calculation::{Calculation, Input, Output, Sort};
pub use error::ReckonError;
pub use given::Given;
pub use json::{answer_line, ask_json, bare_line, describe};

/// Every calculation, in the order of the way through a job.
pub fn all() -> impl Iterator<Item = &'static Calculation> {
    catalogue::ALL.iter().flat_map(|chapter| chapter.iter())
}

/// The calculation of this name.
///
/// # Errors
/// [`ReckonError::Unknown`] with the nearest name.
pub fn calculation(name: &str) -> Result<&'static Calculation, ReckonError> {
    all().find(|calculation| calculation.name == name).ok_or_else(|| {
        let names = all().map(|calculation| calculation.name);
        ReckonError::Unknown { name: name.to_owned(), nearest: error::nearest(name, names) }
    })
}

/// Asks one calculation, its inputs as text.
///
/// # Errors
/// [`ReckonError`]: a name or an input that is not known, one that is missing or cannot be read,
/// or a case that the calculation does not hold for.
pub fn reckon<'a>(
    name: &str,
    inputs: impl IntoIterator<Item = (&'a str, &'a str)>,
) -> Result<Answer, ReckonError> {
    let calculation = calculation(name)?;
    let given = Given::new(calculation, inputs)?;
    let answered = (calculation.answer)(&given).and_then(Answer::sound);
    answered.map_err(|error| error.holds(calculation.valid))
}

#[cfg(test)]
mod tests;
