//! The log book, the state of a job and its plan
