//! A headless browser on the pages of a shop, and what is needed for it.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use serde_json::{Value as Json, json};
use tempfile::TempDir;
use thirtyfour::prelude::*;

/// A browser of this machine, closed when it is dropped.
pub struct Browser {
    pub driver: WebDriver,
    chromedriver: Child,
    _profile: TempDir,
}

/// The folder of the project.
pub fn project() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// What must be there: the browser's driver, the browser, and the accessibility checker. Without
/// them the test is left out and says so; where nothing may be left out, it fails.
pub fn missing() -> bool {
    let on_path = |name: &str| {
        let path = std::env::var_os("PATH").unwrap_or_default();
        std::env::split_paths(&path).any(|folder| folder.join(name).is_file())
    };
    let needs = ["chromedriver", "chromium"].into_iter().filter(|name| !on_path(name));
    let axe = (!axe().is_file()).then_some("axe-core 4.14.1 in node_modules");
    let needs: Vec<&str> = needs.chain(axe).collect();
    if needs.is_empty() {
        return false;
    }
    let words = format!("the browser tests need {}", needs.join(", "));
    assert!(std::env::var("CI").as_deref() != Ok("true"), "{words}");
    eprintln!("SKIPPED: {words}");
    true
}

fn axe() -> PathBuf {
    project().join("node_modules/axe-core/axe.min.js")
}

impl Browser {
    pub async fn open() -> Self {
        let mut chromedriver =
            Command::new("chromedriver").arg("--port=0").stdout(Stdio::piped()).spawn().unwrap();
        let said = BufReader::new(chromedriver.stdout.take().unwrap()).lines();
        let said =
            said.map_while(Result::ok).find(|line| line.contains("started successfully on port"));
        let said = said.expect("chromedriver says its port");
        let port = said.trim_end_matches('.').rsplit(' ').next().unwrap().to_owned();
        let profile = TempDir::new().unwrap();
        let mut wishes = DesiredCapabilities::chrome();
        for flag in [
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--hide-scrollbars",
        ] {
            wishes.add_arg(flag).unwrap();
        }
        wishes.add_arg(&format!("--user-data-dir={}", profile.path().display())).unwrap();
        let driver = WebDriver::new(format!("http://127.0.0.1:{port}"), wishes).await.unwrap();
        Self { driver, chromedriver, _profile: profile }
    }

    /// As wide and as high as such a screen, in its light or its dark.
    pub async fn screen(&self, width: u32, height: u32, scheme: &str) {
        let cdp = self.driver.cdp();
        let size =
            json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        cdp.send_raw("Emulation.setDeviceMetricsOverride", size).await.unwrap();
        let media = json!({ "features": [{ "name": "prefers-color-scheme", "value": scheme }] });
        cdp.send_raw("Emulation.setEmulatedMedia", media).await.unwrap();
    }

    pub async fn go(&self, address: &str) {
        self.driver.goto(address).await.unwrap();
    }

    /// What a line of script gives.
    pub async fn script(&self, line: &str) -> Json {
        self.driver.execute(line, vec![]).await.unwrap().json().clone()
    }

    /// Waits until a line of script is true.
    pub async fn until(&self, line: &str) {
        for _ in 0..400 {
            if self.script(&format!("return Boolean({line})")).await == Json::Bool(true) {
                return;
            }
            tokio::time::sleep(std::time::Duration::from_millis(25)).await;
        }
        panic!("it never came to be that {line}");
    }

    /// Keys, to whatever has the focus.
    pub async fn keys(&self, keys: impl Into<TypingData>) {
        self.driver.action_chain().send_keys(keys).perform().await.unwrap();
    }

    /// The Enter key, straight to the browser: its driver would press again where a page goes away
    /// under the key.
    pub async fn enter(&self) {
        for kind in ["keyDown", "keyUp"] {
            let text = if kind == "keyDown" { "\r" } else { "" };
            let key = json!({ "type": kind, "key": "Enter", "code": "Enter", "windowsVirtualKeyCode": 13, "text": text });
            self.driver.cdp().send_raw("Input.dispatchKeyEvent", key).await.unwrap();
        }
    }

    /// A key while another one is held down.
    pub async fn chord(&self, held: Key, key: impl Into<TypingData>) {
        let chain = self.driver.action_chain().key_down(held.clone()).send_keys(key).key_up(held);
        chain.perform().await.unwrap();
    }

    /// What the accessibility checker finds.
    pub async fn hindrances(&self) -> Vec<String> {
        let checker = std::fs::read_to_string(axe()).unwrap();
        self.driver.execute(checker.as_str(), vec![]).await.unwrap();
        let run = "const done = arguments[arguments.length - 1]; \
                   axe.run(document, { resultTypes: ['violations'] }) \
                     .then((found) => done(found.violations.map((one) => \
                       `${one.id}: ${one.help}: ${one.nodes.slice(0, 3).map((node) => node.html.slice(0, 160) + ' ' + node.any.map((any) => any.message).join('; ')).join(' | ')}`)), \
                     (error) => done([`the checker failed: ${error}`]));";
        let found = self.driver.execute_async(run, vec![]).await.unwrap();
        serde_json::from_value(found.json().clone()).unwrap()
    }

    /// The whole page as a picture.
    pub async fn picture(&self, name: &str) {
        let size = self.script("return [innerWidth, document.documentElement.scrollHeight]").await;
        let clip = json!({ "x": 0, "y": 0, "width": size[0], "height": size[1], "scale": 1 });
        let wanted = json!({ "format": "png", "captureBeyondViewport": true, "clip": clip });
        let taken = self.driver.cdp().send_raw("Page.captureScreenshot", wanted).await.unwrap();
        let shots = project().join("shots");
        std::fs::create_dir_all(&shots).unwrap();
        let bytes = decoded(taken["data"].as_str().unwrap());
        std::fs::write(shots.join(name), bytes).unwrap();
    }

    pub async fn close(mut self) {
        let _ = self.driver.clone().quit().await;
        let _ = self.chromedriver.kill();
        let _ = self.chromedriver.wait();
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        let _ = self.chromedriver.kill();
    }
}

/// Base64 (RFC 4648, section 4) to bytes.
fn decoded(text: &str) -> Vec<u8> {
    let value = |letter: u8| match letter {
        b'A'..=b'Z' => Some(letter - b'A'),
        b'a'..=b'z' => Some(letter - b'a' + 26),
        b'0'..=b'9' => Some(letter - b'0' + 52),
        b'+' => Some(62),
        b'/' => Some(63),
        _ => None,
    };
    let six: Vec<u8> = text.bytes().filter_map(value).collect();
    let bytes = six.chunks(4).flat_map(|group| {
        let all = group
            .iter()
            .enumerate()
            .fold(0_u32, |all, (place, &six)| all | u32::from(six) << (18 - 6 * place));
        all.to_be_bytes()[1..group.len()].to_vec()
    });
    bytes.collect()
}
