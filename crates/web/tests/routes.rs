//! The pages and the HTTP interface, called in-process on a real database.
#![expect(clippy::unwrap_used, reason = "a test may stop")]

mod common;

use axum::body::Body;
use axum::http::header::{CONTENT_TYPE, COOKIE, HOST, LOCATION, ORIGIN, SET_COOKIE};
use axum::http::{Request, StatusCode};
use common::Held;
use http_body_util::BodyExt;
use job::Act;
use records::JobId;
use serde_json::{Value as Json, json};
use tower::ServiceExt;

/// What came back.
struct Answer {
    status: StatusCode,
    headers: axum::http::HeaderMap,
    body: String,
}

impl Answer {
    fn json(&self) -> Json {
        serde_json::from_str(&self.body).unwrap()
    }

    fn header(&self, name: impl axum::http::header::AsHeaderName) -> &str {
        self.headers.get(name).map_or("", |value| value.to_str().unwrap())
    }
}

async fn ask(held: &Held, request: Request<Body>) -> Answer {
    let response = web::app(held.shop.clone()).oneshot(request).await.unwrap();
    let (parts, body) = response.into_parts();
    let bytes = body.collect().await.unwrap().to_bytes();
    let body = String::from_utf8_lossy(&bytes).into_owned();
    Answer { status: parts.status, headers: parts.headers, body }
}

fn get(path: &str) -> Request<Body> {
    Request::get(path).header(HOST, "localhost:4870").body(Body::empty()).unwrap()
}

fn post(path: &str, pairs: &[(&str, &str)]) -> Request<Body> {
    let body = serde_urlencoded::to_string(pairs).unwrap();
    Request::post(path)
        .header(HOST, "localhost:4870")
        .header(COOKIE, "hand=by=T.B.")
        .header(CONTENT_TYPE, "application/x-www-form-urlencoded")
        .body(Body::from(body))
        .unwrap()
}

async fn held_pump() -> (Held, JobId) {
    let held = common::shop().await;
    let id = common::pump(&held.records).await;
    (held, id)
}

/// What stands at the place that the readings of these tests are written at.
async fn across(held: &Held, id: JobId) -> Option<String> {
    let file = held.records.book(id).await.unwrap().job().file;
    let station = file.sizes.driver.bore.get("1")?;
    station.across.as_ref().map(|reading| reading.text().to_owned())
}

const ACROSS: &str = "sizes.driver.bore.1.across";

#[tokio::test]
async fn every_page_answers() {
    let (held, id) = held_pump().await;
    let stages = job::Stage::ALL.map(|stage| format!("/jobs/{id}/{}", stage.key()));
    let others = [
        "/".to_owned(),
        format!("/jobs/{id}"),
        format!("/jobs/{id}/steps"),
        format!("/jobs/{id}/drawing"),
        format!("/jobs/{id}/sheet"),
    ];
    for path in stages.into_iter().chain(others) {
        let page = ask(&held, get(&path)).await;
        assert_eq!(page.status, StatusCode::OK, "{path}");
        assert!(page.body.contains("<h1>") && page.body.contains("id=\"page\""), "{path}");
        assert!(!page.body.contains("style="), "{path} has a style that the policy forbids");
        assert!(!page.body.contains("http://") || page.body.contains("www.w3.org"), "{path}");
        assert!(page.header("content-security-policy").contains("default-src 'self'"), "{path}");
    }
}

#[tokio::test]
async fn what_is_not_there_is_said_to_be_not_there() {
    let (held, id) = held_pump().await;
    for path in [
        "/nothing".to_owned(),
        "/jobs/0190b3a5-0000-7000-8000-000000000000".to_owned(),
        format!("/jobs/{id}/polishing"),
        "/assets/0000-style.css".to_owned(),
    ] {
        assert_eq!(ask(&held, get(&path)).await.status, StatusCode::NOT_FOUND, "{path}");
    }
    assert_eq!(ask(&held, post("/demos/nothing", &[])).await.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn a_new_job_begins_at_its_first_stage() {
    let held = common::shop().await;
    let begun = ask(&held, post("/jobs", &[("title", " Fan <3> ")])).await;
    assert_eq!(begun.status, StatusCode::SEE_OTHER);
    assert!(begun.header(LOCATION).ends_with("/machines"));
    let page = ask(&held, get(begun.header(LOCATION))).await;
    assert!(page.body.contains("Fan &lt;3&gt;"), "a name is not escaped");
    let jobs = held.records.jobs().await.unwrap();
    assert_eq!((jobs[0].title.as_str(), jobs[0].by.as_str()), ("Fan <3>", "T.B."));
    assert_eq!(ask(&held, post("/jobs", &[("title", " ")])).await.status, StatusCode::BAD_REQUEST);
}

#[tokio::test]
async fn a_demo_job_is_copied_into_the_records() {
    let held = common::shop().await;
    let opened = ask(&held, post("/demos/pump", &[])).await;
    let page = ask(&held, get(opened.header(LOCATION))).await;
    assert!(page.body.contains("Sea-water pump 2") && page.body.contains("(invented)"));
}

#[tokio::test]
async fn a_number_takes_the_unit_beside_its_field_and_the_next_field_waits() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    let sent = [("units", "metric"), ("at", ACROSS), (ACROSS, " 80.014 ")];
    let answer = ask(&held, post(&path, &sent)).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    assert_eq!(
        answer.header(LOCATION),
        format!("{path}?at=sizes.driver.bore.2.along#f-sizes-driver-bore-2-along")
    );
    assert_eq!(across(&held, id).await.as_deref(), Some("80.014 mm"));
    let entries = held.records.book(id).await.unwrap();
    assert_eq!(entries.entries().last().unwrap().by, "T.B.");
}

#[tokio::test]
async fn a_unit_that_was_typed_wins_over_the_one_beside_the_field() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    ask(&held, post(&path, &[("units", "metric"), (ACROSS, "3.1502 in")])).await;
    assert_eq!(across(&held, id).await.as_deref(), Some("3.1502 in"));
}

/// The switch may have been pressed in another window meanwhile.
#[tokio::test]
async fn a_number_is_read_in_the_units_of_the_page_that_it_was_typed_on() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    ask(&held, post(&path, &[("units", "inch"), (ACROSS, "3.1502")])).await;
    assert_eq!(across(&held, id).await.as_deref(), Some("3.1502 in"));
}

#[tokio::test]
async fn what_cannot_be_read_comes_back_in_its_field_and_the_rest_is_kept() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    let along = "sizes.driver.bore.2.along";
    let sent = [("units", "metric"), (ACROSS, "80,014"), (along, "80.010")];
    let page = ask(&held, post(&path, &sent)).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(page.body.contains("value=\"80,014\""), "what was typed is lost");
    assert!(
        page.body.contains(
            "aria-invalid=\"true\" aria-describedby=\"wrong-f-sizes-driver-bore-1-across\""
        )
    );
    assert!(page.body.contains("id=\"wrong-f-sizes-driver-bore-1-across\""));
    assert!(page.body.contains("two meanings"), "it does not say why");
    assert_eq!(across(&held, id).await, None);
    let file = held.records.book(id).await.unwrap().job().file;
    assert_eq!(file.sizes.driver.bore["2"].along.as_ref().unwrap().text(), "80.010 mm");
}

#[tokio::test]
async fn what_cannot_be_is_refused_with_what_was_expected() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/machines");
    let page = ask(
        &held,
        post(
            &path,
            &[("units", "metric"), ("machines.speed", "-3"), ("was.machines.speed", "1480")],
        ),
    )
    .await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(page.body.contains("greater than zero"));
}

#[tokio::test]
async fn writing_over_a_value_corrects_it_and_keeps_it_legible() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    ask(&held, post(&path, &[("units", "metric"), (ACROSS, "80.516")])).await;
    let over = [
        ("units", "metric"),
        (ACROSS, "80.016"),
        ("was.sizes.driver.bore.1.across", "80.516"),
        ("why", "one turn of the thimble"),
    ];
    ask(&held, post(&path, &over)).await;
    assert_eq!(across(&held, id).await.as_deref(), Some("80.016 mm"));
    let page = ask(&held, get(&path)).await.body;
    assert!(page.contains("<del>80.516 mm</del> <ins>80.016 mm</ins>"));
    assert!(page.contains("<em>one turn of the thimble</em>"));
}

#[tokio::test]
async fn undo_takes_back_a_writing_and_brings_back_what_a_correction_replaced() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    ask(&held, post(&path, &[("units", "metric"), (ACROSS, "80.014")])).await;
    let over =
        [("units", "metric"), (ACROSS, "80.016"), ("was.sizes.driver.bore.1.across", "80.014")];
    ask(&held, post(&path, &over)).await;
    let undo = async || {
        let book = held.records.book(id).await.unwrap();
        let last = book.entries().last().unwrap().id.0.to_string();
        ask(&held, post(&path, &[("undo", &last)])).await
    };
    assert_eq!(undo().await.status, StatusCode::SEE_OTHER);
    assert_eq!(across(&held, id).await.as_deref(), Some("80.014 mm"));
    let length = held.records.length(id).await.unwrap();
    let nonsense = ask(&held, post(&path, &[("undo", "nothing")])).await;
    assert_eq!(nonsense.status, StatusCode::BAD_REQUEST);
    assert_eq!(held.records.length(id).await.unwrap(), length);
}

#[tokio::test]
async fn emptying_a_field_strikes_its_entry() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    let along = "sizes.driver.bore.1.along";
    ask(
        &held,
        post(
            &path,
            &[("units", "metric"), (along, ""), ("was.sizes.driver.bore.1.along", "80.012")],
        ),
    )
    .await;
    let book = held.records.book(id).await.unwrap();
    assert!(matches!(book.entries().last().unwrap().act, Act::Strike { .. }));
    assert!(
        !book.job().file.sizes.driver.bore.contains_key("1")
            || book.job().file.sizes.driver.bore["1"].along.is_none()
    );
    assert!(ask(&held, get(&path)).await.body.contains("<del>80.012 mm</del>"));
}

/// Two windows show one job; the one that is sent later had been opened earlier.
#[tokio::test]
async fn a_page_that_was_left_open_does_not_take_back_what_another_hand_wrote() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    ask(&held, post(&path, &[("units", "metric"), (ACROSS, "80.014")])).await;
    let stale = [("units", "metric"), (ACROSS, ""), ("sizes.driver.bore.2.along", "80.010")];
    ask(&held, post(&path, &stale)).await;
    assert_eq!(across(&held, id).await.as_deref(), Some("80.014 mm"));
}

/// A double press, or a request that was sent again.
#[tokio::test]
async fn the_same_form_twice_writes_once() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/sizes");
    ask(&held, post(&path, &[("units", "metric"), (ACROSS, "80.014")])).await;
    let length = held.records.length(id).await.unwrap();
    ask(&held, post(&path, &[("units", "metric"), (ACROSS, "80.014")])).await;
    assert_eq!(held.records.length(id).await.unwrap(), length);
}

#[tokio::test]
async fn a_form_writes_only_at_the_places_of_its_page() {
    let (held, id) = held_pump().await;
    let length = held.records.length(id).await.unwrap();
    ask(&held, post(&format!("/jobs/{id}/gap"), &[("units", "metric"), ("job.title", "other")]))
        .await;
    assert_eq!(held.records.length(id).await.unwrap(), length);
}

#[tokio::test]
async fn a_set_of_dials_is_named_by_what_it_reads_and_what_it_rides_on() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/lineup");
    let answer = ask(&held, post(&path, &[("dials", "reverse")])).await;
    assert_eq!(answer.status, StatusCode::SEE_OTHER);
    let file = held.records.book(id).await.unwrap().job().file;
    assert_eq!(file.lineup.dials.keys().collect::<Vec<_>>(), ["motor-rim", "pump-rim"]);
    let page = ask(&held, get(answer.header(LOCATION))).await.body;
    assert!(page.contains("on the pump rim, rides on the motor"));
    assert!(page.contains("12 o’clock, dial on the motor rim, rides on the pump"));
}

#[tokio::test]
async fn steps_are_ticked_and_unticked_and_holds_agreed() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/steps");
    let step = held.shop_plan(id).await["on"][0]["id"].as_str().unwrap().to_owned();
    ask(&held, post(&path, &[("tick", &step)])).await;
    ask(&held, post(&path, &[("tick", &step)])).await;
    let ticks = || async { held.records.book(id).await.unwrap().job().ticks };
    assert_eq!(ticks().await[&step].by, "T.B.");
    assert!(ask(&held, get(&path)).await.body.contains("aria-pressed=\"true\""));
    ask(&held, post(&path, &[("untick", &step)])).await;
    assert!(ticks().await.is_empty());
    let agreed = format!("{step}.hold");
    ask(&held, post(&path, &[("tick", &agreed)])).await;
    assert!(ticks().await.contains_key(&agreed));
    let elsewhere =
        ask(&held, post(&path, &[("tick", &step), ("back", "//elsewhere.example/")])).await;
    assert!(elsewhere.header(LOCATION).starts_with(&path));
}

impl Held {
    async fn shop_plan(&self, id: JobId) -> Json {
        ask(self, get(&format!("/api/jobs/{id}/plan"))).await.json()
    }
}

#[tokio::test]
async fn a_remark_stands_in_the_log_of_its_stage() {
    let (held, id) = held_pump().await;
    let sent = [("stage", "lineup"), ("text", "bearing 2 runs warm")];
    ask(&held, post(&format!("/jobs/{id}/notes"), &sent)).await;
    assert!(
        ask(&held, get(&format!("/jobs/{id}/lineup"))).await.body.contains("bearing 2 runs warm")
    );
    assert!(
        !ask(&held, get(&format!("/jobs/{id}/gap"))).await.body.contains("bearing 2 runs warm")
    );
}

#[tokio::test]
async fn the_switch_shows_the_same_job_in_the_other_units() {
    let (held, id) = held_pump().await;
    let kept = ask(&held, post("/hand", &[("units", "inch"), ("back", "/jobs")])).await;
    assert_eq!((kept.status, kept.header(LOCATION)), (StatusCode::SEE_OTHER, "/jobs"));
    let cookie = kept.header(SET_COOKIE).split(';').next().unwrap().to_owned();
    assert!(kept.header(SET_COOKIE).contains("HttpOnly; SameSite=Lax"));
    let mut page = get(&format!("/jobs/{id}/sizes"));
    page.headers_mut().insert(COOKIE, cookie.parse().unwrap());
    let page = ask(&held, page).await.body;
    assert!(page.contains("name=\"units\" value=\"inch\"") && page.contains("value=\"80.012 mm\""));
    let away =
        ask(&held, post("/hand", &[("by", "X"), ("back", "https://elsewhere.example")])).await;
    assert_eq!(away.header(LOCATION), "/");
}

#[tokio::test]
async fn the_script_gets_only_the_part_that_changed() {
    let (held, id) = held_pump().await;
    let mut part = get(&format!("/jobs/{id}/sizes"));
    part.headers_mut().insert("x-part", "book".parse().unwrap());
    let part = ask(&held, part).await;
    assert!(part.body.starts_with("<div class=\"book\""));
    assert_eq!(part.header("vary"), "x-part");
    assert_eq!(part.header("cache-control"), "no-store");
}

#[tokio::test]
async fn another_site_can_neither_send_a_form_nor_take_our_name() {
    let (held, id) = held_pump().await;
    let length = held.records.length(id).await.unwrap();
    let path = format!("/jobs/{id}/notes");
    let sent = [("stage", "lineup"), ("text", "from elsewhere")];
    for (name, value) in [
        ("origin", "http://elsewhere.example"),
        ("origin", "http://localhost:1"),
        ("origin", "null"),
        ("sec-fetch-site", "cross-site"),
        ("sec-fetch-site", "same-site"),
    ] {
        let mut request = post(&path, &sent);
        request.headers_mut().insert(name, value.parse().unwrap());
        assert_eq!(ask(&held, request).await.status, StatusCode::FORBIDDEN, "{name}: {value}");
    }
    for host in ["elsewhere.example", "localhost.elsewhere.example", "10.0.0.7:4870", ""] {
        let mut request = get("/");
        request.headers_mut().insert(HOST, host.parse().unwrap());
        assert_eq!(ask(&held, request).await.status, StatusCode::MISDIRECTED_REQUEST, "{host}");
    }
    assert_eq!(held.records.length(id).await.unwrap(), length);
    for host in ["127.0.0.1:4870", "[::1]:4870", "LOCALHOST"] {
        let mut request = get("/");
        request.headers_mut().insert(HOST, host.parse().unwrap());
        assert_eq!(ask(&held, request).await.status, StatusCode::OK, "{host}");
    }
    let mut ours = post(&path, &sent);
    ours.headers_mut().insert(ORIGIN, "http://localhost:4870".parse().unwrap());
    assert_eq!(ask(&held, ours).await.status, StatusCode::SEE_OTHER);
}

#[tokio::test]
async fn a_name_that_was_allowed_is_answered_to() {
    let held = common::shop().await;
    let shop = held.shop.clone();
    drop(held.shop);
    let shop = shop.with_hosts(["Bench.Works".to_owned()]);
    let request = Request::get("/").header(HOST, "bench.works:80").body(Body::empty()).unwrap();
    assert_eq!(web::app(shop).oneshot(request).await.unwrap().status(), StatusCode::OK);
}

#[tokio::test]
async fn a_form_that_is_too_large_is_not_taken() {
    let (held, id) = held_pump().await;
    let much = "x".repeat(2 << 20);
    let answer =
        ask(&held, post(&format!("/jobs/{id}/notes"), &[("stage", "gap"), ("text", &much)])).await;
    assert_eq!(answer.status, StatusCode::PAYLOAD_TOO_LARGE);
}

#[tokio::test]
async fn every_route_that_the_interface_describes_answers() {
    let (held, id) = held_pump().await;
    let document = ask(&held, get("/api/openapi.json")).await.json();
    assert_eq!(document["openapi"], "3.1.0");
    let paths = document["paths"].as_object().unwrap();
    for (path, methods) in paths {
        let path = path.replace("{id}", &id.to_string()).replace("{name}", "torque");
        for (method, says) in methods.as_object().unwrap() {
            let request = match method.as_str() {
                "get" => get(&path),
                _ if path.contains("/reckon/") => {
                    send_json(&path, &json!({ "power": "90 kW", "speed": "1480 rpm" }))
                }
                _ => send_json(
                    &path,
                    &json!({ "by": "T.B.", "act": { "note": { "stage": "gap", "text": "hot" } } }),
                ),
            };
            let answer = ask(&held, request).await;
            let described = &says["responses"][answer.status.as_str()];
            assert!(answer.status.is_success() && described.is_object(), "{method} {path}");
            assert!(answer.json().is_object() || answer.json().is_array());
        }
    }
    assert_eq!(paths.len(), 6);
}

fn send_json(path: &str, body: &Json) -> Request<Body> {
    Request::post(path)
        .header(HOST, "localhost")
        .header(CONTENT_TYPE, "application/json")
        .body(Body::from(body.to_string()))
        .unwrap()
}

#[tokio::test]
async fn the_interface_enters_what_the_job_accepts_and_says_why_it_does_not() {
    let (held, id) = held_pump().await;
    let path = format!("/api/jobs/{id}/entries");
    let act = |value: &str| json!({ "by": "T.B.", "act": { "write": { "place": ACROSS, "value": value } } });
    let entered = ask(&held, send_json(&path, &act("80.014 mm"))).await;
    assert_eq!(entered.status, StatusCode::CREATED);
    assert_eq!(entered.json()["by"], "T.B.");
    assert_eq!(across(&held, id).await.as_deref(), Some("80.014 mm"));
    let refused = ask(&held, send_json(&path, &act("80.014"))).await;
    assert_eq!(refused.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(refused.json()["error"].as_str().unwrap().contains("no unit"));
    let nobody = "/api/jobs/0190b3a5-0000-7000-8000-000000000000/entries";
    let missing = ask(&held, send_json(nobody, &act("80.014 mm"))).await;
    assert_eq!(
        (missing.status, missing.json()["error"].is_string()),
        (StatusCode::NOT_FOUND, true)
    );
}

#[tokio::test]
async fn the_interface_gives_the_plan_in_either_units() {
    let (held, id) = held_pump().await;
    let plan = ask(&held, get(&format!("/api/jobs/{id}/plan?units=inch"))).await.json();
    assert_eq!(plan["head"]["system"], "inch");
    assert_eq!(plan["stages"].as_array().unwrap().len(), 10);
    let jobs = ask(&held, get("/api/jobs")).await.json();
    assert_eq!(jobs[0]["title"], "Sea-water pump 2");
}

#[tokio::test]
async fn the_card_is_a_pdf_and_the_file_reads_back() {
    let (held, id) = held_pump().await;
    let card = ask(&held, get(&format!("/jobs/{id}/card.pdf"))).await;
    assert_eq!((card.status, card.header(CONTENT_TYPE)), (StatusCode::OK, "application/pdf"));
    assert!(card.body.starts_with("%PDF-"));
    let file = ask(&held, get(&format!("/jobs/{id}/job.toml"))).await;
    assert_eq!(job::read(&file.body).unwrap().job.title, "Sea-water pump 2");
    assert!(file.header("content-disposition").contains("sea-water-pump-2.toml"));
}

#[tokio::test]
async fn a_sheet_is_taken_over_from_another_job_or_from_a_file() {
    let (held, from) = held_pump().await;
    let new = held.records.create("Spare pump", "T.B.").await.unwrap();
    let sheet = |id: JobId| format!("/jobs/{id}/sheet");
    let text = "hubwright_sheet = 1\nkind = \"gear\"\n[sheet]\nrated_torque = \"4300 N·m\"\n\
                [sheet.bolts]\ncount = 8\nsize = \"M12\"\n";
    ask(&held, post(&sheet(from), &[("text", text)])).await;
    let kept = ask(&held, get(&format!("{}.toml", sheet(from)))).await;
    let read = job::read_sheet(&kept.body).unwrap();
    assert_eq!(read.sheet, job::read_sheet(text).unwrap().sheet);
    assert!(ask(&held, get(&sheet(new))).await.body.contains(&from.to_string()));

    let taken = ask(&held, post(&sheet(new), &[("job", &from.to_string())])).await;
    assert_eq!((taken.status, taken.header(LOCATION)), (StatusCode::SEE_OTHER, &*sheet(new)));
    let coupling = held.records.book(new).await.unwrap().job().file.coupling;
    assert_eq!((coupling.kind, coupling.sheet), (read.kind.clone(), read.sheet.clone()));

    let length = held.records.length(new).await.unwrap();
    ask(&held, post(&sheet(new), &[("text", &kept.body)])).await;
    assert_eq!(held.records.length(new).await.unwrap(), length, "what stands is not written again");

    for text in ["hubwright_sheet = 1\n[sheet]\nrated_torqe = \"2 kN·m\"\n", "", "kind"] {
        let refused = ask(&held, post(&sheet(new), &[("text", text)])).await;
        assert_eq!(refused.status, StatusCode::BAD_REQUEST, "{text}");
    }
    assert_eq!(held.records.length(new).await.unwrap(), length);
}

#[tokio::test]
async fn plant_rules_are_taken_over_from_another_job_or_from_a_file() {
    let (held, from) = held_pump().await;
    let new = held.records.create("Spare pump", "T.B.").await.unwrap();
    let rules = |id: JobId| format!("/jobs/{id}/rules");
    let text = "hubwright_site = 1\n[site]\nrules = \"works rules 12\"\nheat_allowed = false\n\
                shims = [\"0.1 mm\", \"1 mm\"]\nlimits = { foot = \"0.02 mm\" }\n\
                [site.holds.on]\ntorque = \"The foreman sees the wrench.\"\n";
    ask(&held, post(&rules(from), &[("text", text)])).await;
    let kept = ask(&held, get(&format!("{}.toml", rules(from)))).await;
    let read = job::read_site(&kept.body).unwrap();
    assert_eq!(read, job::read_site(text).unwrap());
    let page = ask(&held, get(&rules(new))).await.body;
    assert!(page.contains(&from.to_string()) && page.contains("works rules 12"), "{page}");

    let taken = ask(&held, post(&rules(new), &[("job", &from.to_string())])).await;
    assert_eq!((taken.status, taken.header(LOCATION)), (StatusCode::SEE_OTHER, &*rules(new)));
    assert_eq!(held.records.book(new).await.unwrap().job().file.site, read.site);
    let page = ask(&held, get(&rules(new))).await.body;
    for says in ["0.02 mm", "0.1 mm; 1 mm", "A foot rises at most"] {
        assert!(page.contains(says), "{says}: {page}");
    }

    let length = held.records.length(new).await.unwrap();
    ask(&held, post(&rules(new), &[("text", &kept.body)])).await;
    assert_eq!(held.records.length(new).await.unwrap(), length, "what stands is not written again");
    for text in ["hubwright_site = 1\n[site]\nhub_limt = \"120 degC\"\n", "", "site"] {
        let refused = ask(&held, post(&rules(new), &[("text", text)])).await;
        assert_eq!(refused.status, StatusCode::BAD_REQUEST, "{text}");
    }
    assert_eq!(held.records.length(new).await.unwrap(), length);
}

#[tokio::test]
async fn assets_are_kept_for_ever_under_a_name_that_changes_with_them() {
    let held = common::shop().await;
    let page = ask(&held, get("/")).await.body;
    let address = |ending: &str| {
        let end = page.find(ending).unwrap() + ending.len();
        let start = page[..end].rfind("/assets/").unwrap();
        page[start..end].to_owned()
    };
    for (ending, kind) in [("style.css", "text/css"), ("part.js", "text/javascript")] {
        let asset = ask(&held, get(&address(ending))).await;
        assert_eq!(asset.status, StatusCode::OK);
        assert!(asset.header(CONTENT_TYPE).starts_with(kind));
        assert!(asset.header("cache-control").contains("immutable"));
    }
}

/// What was typed beside the button is not lost when it is pressed.
#[tokio::test]
async fn one_of_several_is_ticked_and_unticked() {
    let (held, id) = held_pump().await;
    let path = format!("/jobs/{id}/running");
    let press = async |value: &str| {
        let pressed = format!("running.hardships={value}");
        let sent = [("units", "metric"), ("running.ran_for", "4"), ("toggle", &pressed)];
        ask(&held, post(&path, &sent)).await.status
    };
    let running = async || held.records.book(id).await.unwrap().job().file.running;
    assert_eq!(press("wet").await, StatusCode::SEE_OTHER);
    assert_eq!(press("dusty").await, StatusCode::SEE_OTHER);
    assert_eq!(running().await.hardships, ["wet", "dusty"]);
    assert_eq!(running().await.ran_for.unwrap().text(), "4 h");
    assert_eq!(press("wet").await, StatusCode::SEE_OTHER);
    assert_eq!(running().await.hardships, ["dusty"]);
    assert_eq!(press("dusty").await, StatusCode::SEE_OTHER);
    assert!(running().await.hardships.is_empty());
    assert_eq!(press("pretty").await, StatusCode::BAD_REQUEST);
}

/// 90 kW at 1480 rpm: P = T·2π·n gives 580.7 N·m.
#[tokio::test]
async fn a_calculation_is_asked_alone_with_bare_numbers() {
    let held = common::shop().await;
    let page = ask(&held, get("/reckon/torque?power=90&speed=1480")).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.body.contains("<b>581</b>") && page.body.contains("Source: "));
    let inch = ask(&held, get("/reckon/torque?power=120.7+hp&speed=1480&service_factor=")).await;
    assert!(inch.body.contains("<b>581</b>"), "a typed unit does not win");
}

#[tokio::test]
async fn a_calculation_says_which_input_is_wrong_and_keeps_what_was_typed() {
    let held = common::shop().await;
    let page = ask(&held, get("/reckon/torque?power=90+furlong&speed=1480")).await;
    assert_eq!(page.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(
        page.body.contains("value=\"90 furlong\"") && page.body.contains("id=\"wrong-i-power\"")
    );
    let missing = ask(&held, get("/reckon/torque?power=90")).await;
    assert!(missing.body.contains("id=\"wrong-i-speed\""));
    let outside = ask(&held, get("/reckon/torque?power=-90&speed=1480")).await;
    assert_eq!(outside.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(outside.body.contains("no answer"));
    assert_eq!(ask(&held, get("/reckon/nothing")).await.status, StatusCode::NOT_FOUND);
    let list = ask(&held, get("/reckon?q=shim")).await;
    assert!(list.body.contains("/reckon/shim") && !list.body.contains("/reckon/torque"));
}

/// The quick plan says where more is to be had; the full one has it.
#[tokio::test]
async fn the_flow_of_heat_is_worked_out_when_it_is_asked_for() {
    let held = common::shop().await;
    let demo = include_str!("../../../demo/sea-water-pump.toml");
    let book = records::book_of_file(&job::read(demo).unwrap(), "R.A.");
    let id = held.records.import(&book).await.unwrap();
    let quick = ask(&held, get(&format!("/jobs/{id}/heat"))).await.body;
    assert!(quick.contains(&format!("data-later=\"/jobs/{id}/heat?full=1\"")));
    let open = "Worked out on the full plan.";
    assert!(quick.contains(open), "a time that is wanted is not inside before it is known");
    let full = ask(&held, get(&format!("/jobs/{id}/heat?full=1"))).await.body;
    assert!(full.contains("Seconds in hand, motor hub") && !full.contains("data-later"));
    assert!(!full.contains(open));
    let kept = ask(&held, get(&format!("/jobs/{id}/heat"))).await.body;
    assert!(kept.contains("Seconds in hand, motor hub"), "the full plan is not kept");
    assert!(!kept.contains(open));
    let plan = ask(&held, get(&format!("/api/jobs/{id}/plan?depth=full"))).await.json();
    let heat = plan["stages"][4]["numbers"].as_array().unwrap().clone();
    assert!(heat.iter().any(|number| number["id"] == "heat.driver.seconds"));
}

/// A try-out answers and writes nothing; it stands on the page when the button asks, and its seconds
/// grow with the hub's heat.
#[tokio::test]
async fn a_try_out_answers_and_writes_nothing() {
    let held = common::shop().await;
    let id = common::kept(&held.records, common::HOT).await;
    let before = held.records.book(id).await.unwrap().entries().len();
    let page = ask(&held, get(&format!("/jobs/{id}/heat"))).await.body;
    assert!(page.contains("data-try"), "no try-out on the page");
    assert!(!page.contains("Count on"), "nothing was tried yet");
    let low = async |hub: &str| {
        let path = format!("/jobs/{id}/heat/try?end=driver&hub={hub}&shaft=20");
        let answer = ask(&held, get(&path)).await;
        assert_eq!(answer.status, StatusCode::OK);
        let seconds =
            answer.body.split("Count on <b>").nth(1).unwrap_or_else(|| panic!("{}", answer.body));
        let digits: String =
            seconds.chars().take_while(|c| c.is_ascii_digit() || *c == '.').collect();
        (digits.parse::<f64>().unwrap(), answer.body.contains("<svg"))
    };
    let (cooler, hotter) = (low("190").await, low("230").await);
    assert!(cooler.0 < hotter.0 && cooler.1 && hotter.1, "{cooler:?} {hotter:?}");
    let cold = ask(&held, get(&format!("/jobs/{id}/heat/try?end=driver&hub=30&shaft=20"))).await;
    assert!(cold.body.contains("No seconds in hand"), "{}", cold.body);
    let button = ask(&held, get(&format!("/jobs/{id}/heat?end=driver&hub=230&shaft=20"))).await;
    assert!(button.body.contains("Count on"), "the button shows it without a script");
    let odd = ask(&held, get(&format!("/jobs/{id}/heat/try?end=nobody&hub=x&shaft=NaN"))).await;
    assert_eq!((odd.status, odd.body.as_str()), (StatusCode::OK, ""));
    assert_eq!(held.records.book(id).await.unwrap().entries().len(), before);
}
