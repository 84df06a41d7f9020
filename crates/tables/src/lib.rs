//! What standards and handbooks say: data with its source, no physics
