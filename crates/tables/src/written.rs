//! Types that an entry writes as text: kept as a string, read and shown by `FromStr` and `Display`.

macro_rules! as_text {
    ($($written:ty),*) => {$(
        impl TryFrom<String> for $written {
            type Error = <Self as std::str::FromStr>::Err;
            fn try_from(text: String) -> Result<Self, Self::Error> { text.parse() }
        }
        impl From<$written> for String {
            fn from(written: $written) -> Self { written.to_string() }
        }
    )*};
}
