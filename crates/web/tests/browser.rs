//! A real browser on the real pages: by keyboard alone, with the server killed, without script,
//! and looked over for what would hinder anybody.
#![expect(clippy::unwrap_used, reason = "a test may stop")]
#![expect(clippy::disallowed_methods, reason = "these tests read files and write pictures")]

mod common;

use std::collections::BTreeMap;
use std::io::{BufRead, BufReader};
use std::process::{Child, Command, Stdio};

use common::browser::{self, Browser};
use job::Stage;
use records::{JobId, Records};
use serde_json::Value as Json;
use thirtyfour::Key;
use web::Shop;

/// Serves a shop on any free port, for as long as the test runs.
async fn served(shop: &Shop) -> String {
    let listener = tokio::net::TcpListener::bind("127.0.0.1:0").await.unwrap();
    let address = format!("http://{}", listener.local_addr().unwrap());
    tokio::spawn(web::serve(listener, shop.clone(), std::future::pending()));
    address
}

/// What the field with the focus is: its place, its unit, what stands in it.
async fn focused(browser: &Browser) -> (String, String, String) {
    let told = browser
        .script(
            "const on = document.activeElement; const field = on.closest('#entry .field'); \
             return [field ? on.name : '', on.dataset.unit ?? '', field ? on.value : on.tagName]",
        )
        .await;
    let text = |place: usize| told[place].as_str().unwrap_or("").to_owned();
    (text(0), text(1), text(2))
}

/// What a job file has at a place, as it is typed.
fn wanted(file: &Json, place: &str) -> Option<String> {
    let found = place.split('.').try_fold(file, |table, key| table.get(key))?;
    match found {
        Json::String(text) => Some(text.clone()),
        Json::Bool(flag) => Some(if *flag { "yes" } else { "no" }.to_owned()),
        Json::Number(number) => Some(number.to_string()),
        Json::Array(texts) => {
            let texts: Vec<&str> = texts.iter().filter_map(Json::as_str).collect();
            Some(texts.join("; "))
        }
        _ => None,
    }
}

/// Types what the file has into the field with the focus, then Enter; without its unit where that
/// stands beside the field.
async fn type_in(browser: &Browser, file: &Json, place: &str, unit: &str, now: &str) {
    let Some(text) = wanted(file, place) else { return browser.enter().await };
    let bare = text.strip_suffix(unit).filter(|_| !unit.is_empty());
    let bare = bare.map_or(text.as_str(), str::trim_end);
    if now != bare && now != text {
        let is_list = "return document.activeElement.matches('select')";
        if browser.script(is_list).await == Json::Bool(true) {
            choose(browser, &text).await;
        } else {
            browser.chord(Key::Control, "a").await;
            browser.keys(bare).await;
        }
    }
    browser.enter().await;
}

/// Goes through a list with the arrow keys until this is chosen.
async fn choose(browser: &Browser, value: &str) {
    let chosen = format!("return document.activeElement.value === {value:?}");
    for arrow in std::iter::repeat_n(Key::Up, 30).chain(std::iter::repeat_n(Key::Down, 60)) {
        if browser.script(&chosen).await == Json::Bool(true) {
            return;
        }
        browser.keys(arrow).await;
    }
    panic!("{value} cannot be chosen");
}

/// Enters a whole page of fields: Enter goes on from field to field; Tab finds the folded groups.
async fn enter_page(browser: &Browser, file: &Json) -> usize {
    let mut entered = 0;
    loop {
        let (place, unit, now) = focused(browser).await;
        if place.is_empty() {
            // At the link to the next stage, or past a folded group: look for a closed one with
            // something of the file in it.
            let closed = "const groups = [...document.querySelectorAll('#entry details:not([open])')]; \
                 return groups.map((group) => [group.id, ...[...group.querySelectorAll('.field input, .field select')].map((one) => one.name)])";
            let closed = browser.script(closed).await;
            let closed: Vec<Vec<String>> = serde_json::from_value(closed).unwrap();
            let group = closed
                .iter()
                .find(|names| names[1..].iter().any(|name| wanted(file, name).is_some()));
            let Some(group) = group else { return entered };
            tab_to(browser, &format!("document.activeElement.parentElement.id === '{}'", group[0]))
                .await;
            browser.enter().await;
            browser.keys(Key::Tab).await;
            continue;
        }
        entered += 1;
        type_in(browser, file, &place, &unit, &now).await;
        let moved = format!("document.activeElement.name !== {place:?}");
        browser.until(&moved).await;
    }
}

/// Tab, or Tab backwards, until a line of script is true.
async fn tab_to(browser: &Browser, line: &str) {
    for _ in 0..300 {
        if browser.script(&format!("return Boolean({line})")).await == Json::Bool(true) {
            return;
        }
        browser.chord(Key::Shift, Key::Tab).await;
    }
    panic!("Tab never came to where {line}");
}

#[tokio::test(flavor = "multi_thread")]
async fn a_job_is_entered_from_nothing_to_its_card_by_keyboard_alone() {
    if browser::missing() {
        return;
    }
    let held = common::shop().await;
    let address = served(&held.shop).await;
    let demo =
        std::fs::read_to_string(browser::project().join("demo/sea-water-pump.toml")).unwrap();
    let demo = job::read(&demo).unwrap();
    let file = serde_json::to_value(&demo).unwrap();
    let browser = Browser::open().await;
    browser.screen(1366, 900, "light").await;
    browser.go(&address).await;

    tab_to(&browser, "document.activeElement.name === 'title'").await;
    browser.keys(demo.job.title.as_str()).await;
    browser.enter().await;
    browser.until("location.pathname.endsWith('/machines')").await;
    let mut entered = 0;
    for stage in Stage::ALL {
        browser.until(&format!("location.pathname.endsWith('/{}')", stage.key())).await;
        if stage == Stage::Lineup {
            tab_to(&browser, "document.activeElement.value === 'reverse'").await;
            browser.enter().await;
            browser.until("document.activeElement.name?.startsWith('lineup.dials.')").await;
        }
        let first = "document.querySelector('#entry .field input, #entry .field select')";
        tab_to(&browser, &format!("document.activeElement === {first}")).await;
        entered += enter_page(&browser, &file).await;
        if stage != Stage::Removal {
            tab_to(&browser, "document.activeElement.matches('a.on')").await;
            browser.enter().await;
        }
    }
    let id = held.records.jobs().await.unwrap()[0].id;
    settle(&held.records, id).await;
    let written = held.records.book(id).await.unwrap().job();
    assert_eq!(written.set_aside, []);
    let wanted = job::JobFile { entries: Vec::new(), ..demo };
    assert_eq!(job::write(&written.to_file()).unwrap(), job::write(&wanted).unwrap());
    assert_eq!(written.to_file(), wanted);
    println!("{entered} fields passed, {} entries", held.records.length(id).await.unwrap());

    browser.go(&format!("{address}/jobs/{id}")).await;
    tab_to(&browser, "document.activeElement.href?.endsWith('/card.pdf')").await;
    let card = "const done = arguments[0]; fetch(document.activeElement.href).then(async (card) => \
                done([card.headers.get('content-type'), (await card.text()).slice(0, 5)]))";
    let timeouts =
        thirtyfour::TimeoutConfiguration::new(Some(std::time::Duration::from_mins(4)), None, None);
    browser.driver.update_timeouts(timeouts).await.unwrap();
    let card = browser.driver.execute_async(card, vec![]).await.unwrap();
    assert_eq!(card.json(), &serde_json::json!(["application/pdf", "%PDF-"]));
    browser.close().await;
}

/// Waits until no more entries come.
async fn settle(records: &Records, id: JobId) {
    let mut length = 0;
    loop {
        tokio::time::sleep(std::time::Duration::from_millis(500)).await;
        let now = records.length(id).await.unwrap();
        if now == length {
            return;
        }
        length = now;
    }
}

const SERVED: &str = "HUBWRIGHT_TEST_SERVE";

/// The program that is killed: this test once more, as a server on a file.
fn start_server(folder: &std::path::Path, port: u16) -> (Child, u16) {
    let mut server = Command::new(std::env::current_exe().unwrap())
        .args(["--exact", "a_killed_server_keeps_what_was_entered", "--nocapture"])
        .env(SERVED, format!("{port} {}", folder.display()))
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let said = BufReader::new(server.stdout.take().unwrap()).lines();
    let line = said.map_while(Result::ok).find(|line| line.contains("serving at port "));
    let port = line.unwrap().rsplit(' ').next().unwrap().parse().unwrap();
    (server, port)
}

async fn serve_until_killed(asked: &str) {
    let (port, folder) = asked.split_once(' ').unwrap();
    let path = std::path::Path::new(folder).join("books.db");
    let records = Records::open(&path).await.unwrap();
    let listener =
        tokio::net::TcpListener::bind(("127.0.0.1", port.parse().unwrap())).await.unwrap();
    println!("serving at port {}", listener.local_addr().unwrap().port());
    let shop = Shop::new(records, &path, &[], "Hubwright test");
    web::serve(listener, shop, std::future::pending()).await.unwrap();
}

#[tokio::test(flavor = "multi_thread")]
async fn a_killed_server_keeps_what_was_entered() {
    if let Ok(asked) = std::env::var(SERVED) {
        return serve_until_killed(&asked).await;
    }
    if browser::missing() {
        return;
    }
    let held = common::shop().await;
    let id = common::pump(&held.records).await;
    let (mut server, port) = start_server(held.folder.path(), 0);
    let browser = Browser::open().await;
    browser.screen(1366, 900, "light").await;
    browser
        .go(&format!("http://127.0.0.1:{port}/jobs/{id}/sizes?at=sizes.driver.bore.1.across"))
        .await;
    browser.keys("80.014").await;
    browser.enter().await;
    browser.until("document.querySelector('.log').textContent.includes('80.014 mm')").await;
    server.kill().unwrap();
    server.wait().unwrap();

    browser.keys("80.010").await;
    browser.enter().await;
    browser.until("document.getElementById('say').textContent.includes('Not written')").await;
    let still = "document.getElementById('f-sizes-driver-bore-2-along').value === '80.010'";
    browser.until(still).await;
    let kept = held.records.book(id).await.unwrap().job().file;
    assert_eq!(kept.sizes.driver.bore["1"].across.as_ref().unwrap().text(), "80.014 mm");
    assert!(!kept.sizes.driver.bore.contains_key("2"));

    let (mut server, _) = start_server(held.folder.path(), port);
    browser.keys("80.013").await;
    browser.enter().await;
    browser.until("document.querySelector('.log').textContent.includes('80.013 mm')").await;
    let kept = held.records.book(id).await.unwrap().job().file;
    let station = &kept.sizes.driver.bore["2"];
    assert_eq!(station.along.as_ref().unwrap().text(), "80.010 mm");
    assert_eq!(station.across.as_ref().unwrap().text(), "80.013 mm");
    server.kill().unwrap();
    server.wait().unwrap();
    browser.close().await;
}

/// A hand that types on while the answer is on its way loses nothing, and Undo takes back.
#[tokio::test(flavor = "multi_thread")]
async fn enter_goes_on_at_once_and_what_is_wrong_comes_back() {
    if browser::missing() {
        return;
    }
    let held = common::shop().await;
    let id = common::pump(&held.records).await;
    let address = served(&held.shop).await;
    let browser = Browser::open().await;
    browser.screen(1366, 900, "light").await;
    browser.go(&format!("{address}/jobs/{id}/sizes?at=sizes.driver.bore.1.across")).await;
    // As an indicator types: value and Enter, without a pause.
    browser.keys(format!("80.014{e}80.010{e}80.013{e}", e = char::from(Key::Enter)).as_str()).await;
    settle(&held.records, id).await;
    let bore = held.records.book(id).await.unwrap().job().file.sizes.driver.bore;
    let text = |station: &str| {
        let station = &bore[station];
        [&station.along, &station.across].map(|one| one.as_ref().map(|one| one.text().to_owned()))
    };
    assert_eq!(text("1"), [Some("80.012 mm".into()), Some("80.014 mm".into())]);
    assert_eq!(text("2"), [Some("80.010 mm".into()), Some("80.013 mm".into())]);
    assert_eq!(focused(&browser).await.0, "sizes.driver.bore.3.along");

    browser.keys("80,013").await;
    browser.enter().await;
    browser.until("document.querySelector('[aria-invalid]')").await;
    assert_eq!(
        focused(&browser).await,
        ("sizes.driver.bore.3.along".into(), "mm".into(), "80,013".into())
    );
    browser.until("document.querySelector('.wrong').textContent.includes('two meanings')").await;
    browser.chord(Key::Control, "a").await;
    browser.keys("80.013").await;
    browser.enter().await;
    browser.until("document.querySelector('.log').textContent.includes('80.013 mm') && !document.querySelector('.wrong')").await;

    tab_to(&browser, "document.activeElement.name === 'undo'").await;
    browser.enter().await;
    browser.until("document.querySelector('.log del')").await;
    assert_eq!(focused(&browser).await.0, "sizes.driver.bore.3.along");
    browser.close().await;
}

/// The heat page follows a slider, by keyboard too, on any width; nothing is written.
#[tokio::test(flavor = "multi_thread")]
async fn the_heat_page_follows_a_slider_and_writes_nothing() {
    if browser::missing() {
        return;
    }
    let held = common::shop().await;
    let id = common::kept(&held.records, common::HOT).await;
    let address = served(&held.shop).await;
    let browser = Browser::open().await;
    let before = held.records.book(id).await.unwrap().entries().len();
    let outcome = "return document.querySelector('#try-driver .outcome').textContent";
    for (width, scheme) in [(1366, "light"), (1024, "dark"), (390, "light"), (390, "dark")] {
        browser.screen(width, 900, scheme).await;
        browser.go(&format!("{address}/jobs/{id}/heat")).await;
        browser.script("document.getElementById('try-driver-hub').focus()").await;
        browser.keys(Key::Right).await;
        browser.until("document.querySelector('#try-driver svg')").await;
        let first = browser.script(outcome).await;
        browser.keys(Key::PageUp).await;
        browser.until("document.querySelector('#try-driver [role=status]').textContent.startsWith('Tried: count on')").await;
        assert_ne!(first, browser.script(outcome).await, "a hotter hub stays open longer");
        let on = browser.script("return document.activeElement.id").await;
        assert_eq!(on, "try-driver-hub");
        let wide = "return document.documentElement.scrollWidth <= innerWidth";
        assert_eq!(browser.script(wide).await, Json::Bool(true), "scrolls sideways at {width}");
        assert_eq!(browser.hindrances().await, Vec::<String>::new(), "at {width}, {scheme}");
        browser.script("document.querySelector('.trying').scrollIntoView()").await;
        browser.picture(&format!("try-{width}-{scheme}.png")).await;
    }
    assert_eq!(held.records.book(id).await.unwrap().entries().len(), before);
    browser.close().await;
}

/// Pages work as plain forms where scripts are switched off.
#[tokio::test(flavor = "multi_thread")]
async fn without_script_the_same_forms_write_the_same_entries() {
    if browser::missing() {
        return;
    }
    let held = common::shop().await;
    let id = common::pump(&held.records).await;
    let address = served(&held.shop).await;
    let browser = Browser::open().await;
    let off = serde_json::json!({ "value": true });
    browser.driver.cdp().send_raw("Emulation.setScriptExecutionDisabled", off).await.unwrap();
    browser.go(&format!("{address}/jobs/{id}/sizes?at=sizes.driver.bore.1.across")).await;
    for (place, reading) in [("1.across", "80.014"), ("2.along", "80.010"), ("2.across", "")] {
        browser
            .until(&format!("document.activeElement.name === 'sizes.driver.bore.{place}'"))
            .await;
        browser.keys(reading).await;
        browser.enter().await;
    }
    browser.until("document.activeElement.name === 'sizes.driver.bore.3.along'").await;
    let bore = held.records.book(id).await.unwrap().job().file.sizes.driver.bore;
    assert_eq!(bore["1"].across.as_ref().unwrap().text(), "80.014 mm");
    assert_eq!(bore["2"].along.as_ref().unwrap().text(), "80.010 mm");
    browser.close().await;
}

const SCREENS: [(u32, u32); 3] = [(1366, 900), (1024, 768), (390, 844)];

#[tokio::test(flavor = "multi_thread")]
async fn no_page_hinders_anybody() {
    if browser::missing() {
        return;
    }
    let held = common::shop().await;
    let demo =
        std::fs::read_to_string(browser::project().join("demo/sea-water-pump.toml")).unwrap();
    let demo = records::book_of_file(&job::read(&demo).unwrap(), "R.A.");
    let id = held.records.import(&demo).await.unwrap();
    let new = held.records.create("Cooling-tower fan", "T.B.").await.unwrap();
    let address = served(&held.shop).await;
    let mut pages = vec![("jobs", "/".to_owned()), ("job", format!("/jobs/{id}"))];
    pages.extend(Stage::ALL.map(|stage| (stage.key(), format!("/jobs/{id}/{}", stage.key()))));
    pages.extend([
        ("steps", format!("/jobs/{id}/steps")),
        ("drawing", format!("/jobs/{id}/drawing")),
        ("sheet", format!("/jobs/{id}/sheet")),
        ("rules", format!("/jobs/{id}/rules")),
        ("new", format!("/jobs/{new}")),
        ("new-lineup", format!("/jobs/{new}/lineup")),
        ("reckon", "/reckon".to_owned()),
        ("reckon-torque", "/reckon/torque?power=90&speed=1480".to_owned()),
        ("reckon-wrong", "/reckon/torque?power=90+furlong".to_owned()),
        ("nothing", "/nothing".to_owned()),
    ]);
    let browser = Browser::open().await;
    let mut found = BTreeMap::<String, Vec<String>>::new();
    for (width, height) in SCREENS {
        for scheme in ["light", "dark"] {
            browser.screen(width, height, scheme).await;
            for (name, path) in &pages {
                browser.go(&format!("{address}{path}")).await;
                browser
                    .script("document.querySelector('details.number')?.setAttribute('open', '')")
                    .await;
                browser.until("document.fonts.status === 'loaded'").await;
                let where_ = format!("{name}, {width} px, {scheme}");
                let mut hindrances = browser.hindrances().await;
                let over = browser
                    .script("return document.documentElement.scrollWidth - innerWidth")
                    .await;
                if over.as_i64() != Some(0) {
                    hindrances.push(format!("{over} px wider than the screen"));
                }
                for one in hindrances {
                    found.entry(one).or_default().push(where_.clone());
                }
                browser.picture(&format!("{name}-{width}-{scheme}.png")).await;
            }
        }
    }
    assert!(found.is_empty(), "{found:#?}");
    browser.close().await;
}
