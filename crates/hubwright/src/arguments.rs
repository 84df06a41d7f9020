//! The command line.

use std::net::IpAddr;
use std::path::PathBuf;

use clap::{Args, Parser, Subcommand, ValueEnum};
use quantities::System;

/// Coupling hubs on, machines in line, hubs off again: the plan, the job card, the record.
///
/// Exit codes: 0 done, 1 the input has an error, 2 the command line is wrong, 3 the disk or the
/// network refused.
#[derive(Debug, Parser)]
#[command(name = "hubwright", version, max_term_width = 100)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Prints the plan of a job file.
    Plan(Plan),
    /// Writes the job card as a PDF.
    Card(Card),
    /// Serves the pages to a browser on this machine.
    Serve(Serve),
    /// Asks one calculation alone.
    Reckon(Reckon),
    /// Takes the maker's sheet out of a job, puts one in, or begins one.
    Sheet(Sheet),
    /// Takes the plant's rules out of a job, puts them into one, begins some, or reads them out.
    Rules(Rules),
    /// Prints the JSON Schema of a job file, for editors.
    Schema {
        /// That of a maker's sheet instead.
        #[arg(long)]
        sheet: bool,
        /// That of the plant's rules instead.
        #[arg(long, conflicts_with = "sheet")]
        rules: bool,
    },
    /// Prints completions for a shell.
    Completions {
        /// The shell.
        shell: clap_complete::Shell,
    },
    /// Prints the manual page.
    Man,
}

/// The plan of a job file.
#[derive(Debug, Args)]
pub struct Plan {
    /// The job file; - reads standard input.
    pub file: PathBuf,
    /// Print the whole plan as JSON.
    #[arg(long)]
    pub json: bool,
    /// Print the working of every number.
    #[arg(long, conflicts_with = "json")]
    pub working: bool,
    /// Units, other than the job's own.
    #[arg(long)]
    pub units: Option<Units>,
    /// Write the job card to this file as well.
    #[arg(long, value_name = "OUT.pdf")]
    pub card: Option<PathBuf>,
    /// Paper of that card, other than the one that goes with the units.
    #[arg(long)]
    pub paper: Option<Paper>,
}

/// The job card of a job file.
#[derive(Debug, Args)]
pub struct Card {
    /// The job file; - reads standard input.
    pub file: PathBuf,
    /// Where to write the card; - writes to standard output.
    #[arg(short, long, value_name = "OUT.pdf")]
    pub out: PathBuf,
    /// Units, other than the job's own.
    #[arg(long)]
    pub units: Option<Units>,
    /// Paper, other than the one that goes with the units.
    #[arg(long)]
    pub paper: Option<Paper>,
}

/// A maker's sheet.
#[derive(Debug, Args)]
pub struct Sheet {
    /// A job file, whose sheet is printed as a file of its own, or such a sheet.
    #[arg(required_unless_present = "blank")]
    pub file: Option<PathBuf>,
    /// Print an empty sheet of this kind of coupling, to be filled in from the maker's manual.
    #[arg(long, value_name = "KIND", conflicts_with = "file")]
    pub blank: Option<String>,
    /// The form of that kind.
    #[arg(long, requires = "blank")]
    pub form: Option<String>,
    /// Print the job in this file with the sheet in it, in place of the one that it had.
    #[arg(long, value_name = "JOB.toml", conflicts_with = "blank")]
    pub into: Option<PathBuf>,
    /// Print every figure in words, and what the sheet is silent on.
    #[arg(long, conflicts_with_all = ["blank", "into"])]
    pub read: bool,
    /// Write the sheet on paper instead, with lines for what it is silent on; - writes to standard
    /// output.
    #[arg(short, long, value_name = "OUT.pdf", conflicts_with_all = ["into", "read"])]
    pub out: Option<PathBuf>,
    /// Paper of it, A4 unless the job is in inches.
    #[arg(long, requires = "out")]
    pub paper: Option<Paper>,
}

/// The plant's rules.
#[derive(Debug, Args)]
pub struct Rules {
    /// A job file, whose plant rules are printed as a file of their own, or such rules; - reads
    /// standard input.
    #[arg(required_unless_present = "blank")]
    pub file: Option<PathBuf>,
    /// Print an empty set of rules, every rule with what it is, to be filled in by hand.
    #[arg(long, conflicts_with = "file")]
    pub blank: bool,
    /// Print the job in this file with the rules in it, in place of those that it had.
    #[arg(long, value_name = "JOB.toml", conflicts_with = "blank")]
    pub into: Option<PathBuf>,
    /// Check the rules and print every one in words, and what the plant leaves as usual.
    #[arg(long, conflicts_with_all = ["blank", "into"])]
    pub read: bool,
}

/// The pages.
#[derive(Debug, Args)]
pub struct Serve {
    /// The database file; by default in the user's data folder.
    #[arg(long, value_name = "FILE")]
    pub book: Option<PathBuf>,
    /// The address to listen on.
    #[arg(long, default_value = "127.0.0.1")]
    pub address: IpAddr,
    /// The port to listen on; 0 takes any free one.
    #[arg(long, default_value_t = 4870)]
    pub port: u16,
}

/// One calculation.
#[expect(clippy::struct_excessive_bools, reason = "each is a switch of the command line")]
#[derive(Debug, Args)]
#[command(disable_help_flag = true)]
pub struct Reckon {
    /// Its name, then its inputs as key=value, quantities with their units; without inputs it
    /// reads JSON lines from standard input, one case a line.
    #[arg(value_name = "NAME key=value")]
    pub words: Vec<String>,
    /// List the calculations.
    #[arg(long)]
    pub list: bool,
    /// Answer in JSON.
    #[arg(long)]
    pub json: bool,
    /// Answer in JSON with the results alone, as numbers in SI: for very many cases.
    #[arg(long)]
    pub bare: bool,
    /// Units of the answer.
    #[arg(long)]
    pub units: Option<Units>,
    /// Print the inputs, outputs, valid range and source of a calculation.
    #[arg(short, long)]
    pub help: bool,
}

/// Units of the answer.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Units {
    /// Millimetres, newton-metres, degrees Celsius.
    Metric,
    /// Inches and mils, pound-feet, degrees Fahrenheit.
    Inch,
}

/// Paper of the card.
#[derive(Clone, Copy, Debug, ValueEnum)]
pub enum Paper {
    /// 210 × 297 mm.
    A4,
    /// 8.5 × 11 in.
    Letter,
}

impl From<Units> for System {
    fn from(units: Units) -> Self {
        match units {
            Units::Metric => Self::Metric,
            Units::Inch => Self::Inch,
        }
    }
}

impl From<Paper> for papers::Paper {
    fn from(paper: Paper) -> Self {
        match paper {
            Paper::A4 => Self::A4,
            Paper::Letter => Self::Letter,
        }
    }
}
