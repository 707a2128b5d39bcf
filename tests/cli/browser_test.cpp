// report.html in a real browser: on a telephone's screen and on A4. Chromium lays the page out in frames of one wrapper
// page, and a script beside them measures it; the page itself has none.
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>

#include "catch.hpp"
#include "cli/sandbox.hpp"

using namespace sandbox;
using Json = nlohmann::json;

namespace {

bool installed(const std::string& program) { return std::system(("command -v " + program + " >/dev/null 2>&1").c_str()) == 0; }

// What a command prints; nothing when it fails.
std::string output_of(const std::string& command) {
  std::string out;
  FILE* pipe = ::popen((command + " 2>/dev/null").c_str(), "r");
  if (pipe == nullptr) return out;
  std::array<char, 65536> buffer{};
  for (std::size_t n = 0; (n = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) out.append(buffer.data(), n);
  return ::pclose(pipe) == 0 ? out : std::string();
}

std::string in_attribute(const std::string& text) {
  std::string out;
  for (const char c : text) out += c == '&' ? "&amp;" : c == '"' ? "&quot;" : std::string(1, c);
  return out;
}

// Root as it is in a container has no sandbox; a profile of its own keeps two runs apart.
std::string chromium(const Folder& folder, const std::string& arguments) {
  return "timeout 120 chromium --headless --no-sandbox --disable-gpu --hide-scrollbars --user-data-dir=" + folder.at("profile") +
         " " + arguments;
}

// Measures one frame: the page's width, elements out of it, cells narrower than their words, the least contrast of any
// text by WCAG 2's formula, pictures without size.
const char* const measure = R"js(
function channel(v) { v /= 255; return v <= 0.03928 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4); }
function light(c) { return 0.2126 * channel(c[0]) + 0.7152 * channel(c[1]) + 0.0722 * channel(c[2]); }
function parts(s) { const m = s.match(/[\d.]+/g).map(Number); return m.length < 4 ? m.concat(1) : m; }
function ground(e) {
  for (; e; e = e.parentElement) {
    const b = parts(e.ownerDocument.defaultView.getComputedStyle(e).backgroundColor);
    if (b[3] > 0) return b;
  }
  return [255, 255, 255, 1];
}
function look(frame) {
  const doc = frame.contentDocument, win = frame.contentWindow, root = doc.scrollingElement;
  const out = { name: frame.name, inner: win.innerWidth, scroll: root.scrollWidth, clipped: [], low: [], least: 99, texts: 0,
                pictures: 0, scripts: doc.scripts.length, ids: 0 };
  const hidden = e => e.closest('thead') && win.getComputedStyle(e.closest('thead')).position === 'absolute';
  for (const e of doc.body.querySelectorAll('*')) {
    if (hidden(e) || e.closest('svg') && e.tagName !== 'svg') continue;
    const box = e.getBoundingClientRect(), style = win.getComputedStyle(e);
    if (box.width === 0 || style.display === 'contents') continue;
    if (box.left < -0.5 || box.right > win.innerWidth + 0.5) out.clipped.push(e.tagName + ' ' + e.textContent.slice(0, 40));
    if (style.display !== 'inline' && e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0)
      out.clipped.push(e.tagName + ' over ' + e.textContent.slice(0, 40));
    if (e.tagName === 'svg') out.pictures += box.width > 100 && box.height > 30 ? 1 : -1000;
  }
  const walk = doc.createTreeWalker(doc.body, NodeFilter.SHOW_TEXT);
  for (let n; (n = walk.nextNode());) {
    if (!n.data.trim()) continue;
    const e = n.parentElement, style = win.getComputedStyle(e);
    if (style.display === 'none' || e.tagName === 'TITLE' || e.tagName === 'title') continue;
    const c = parts(e.closest('svg') ? style.fill : style.color), g = ground(e);
    const a = light(c), b = light(g), ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    out.texts++;
    out.least = Math.min(out.least, ratio);
    if (ratio < 4.5 || c[3] < 1) out.low.push(n.data.slice(0, 40));
  }
  const ids = [...doc.querySelectorAll('[id]')].map(e => e.id);
  out.ids = ids.length - new Set(ids).size;
  return out;
}
addEventListener('load', () => {
  const found = [...document.querySelectorAll('iframe')].map(look);
  document.getElementById('found').textContent = 'FOUND' + JSON.stringify(found) + 'END';
});
)js";

struct Shown {
  std::string name, page;
  int width;
};

Json measured(const Folder& folder, const std::vector<Shown>& pages) {
  std::string wrapper = "<!DOCTYPE html><meta charset=\"utf-8\"><body><pre id=\"found\"></pre>";
  for (const Shown& one : pages) {
    wrapper += "<iframe name=\"" + one.name + "\" style=\"border:0;height:800px;width:" + std::to_string(one.width) +
               "px\" srcdoc=\"" + in_attribute(one.page) + "\"></iframe>";
  }
  wrapper += std::string("<script>") + measure + "</script>";
  const std::string dom = output_of(chromium(folder, "--dump-dom file://" + folder.write("wrapper.html", wrapper)));
  const std::size_t from = dom.find("FOUND["), to = dom.find("]END");
  if (from == std::string::npos || to == std::string::npos) return Json::array();
  std::string text = dom.substr(from + 5, to + 1 - from - 5);
  for (const auto& [entity, plain] :
       {std::pair<std::string, std::string>{"&lt;", "<"}, {"&gt;", ">"}, {"&nbsp;", " "}, {"&amp;", "&"}}) {
    for (std::size_t at = 0; (at = text.find(entity, at)) != std::string::npos; ++at) text.replace(at, entity.size(), plain);
  }
  return Json::parse(text);
}

// The page with its style for paper, to be measured as a screen is.
std::string as_printed(std::string page) {
  for (const auto& [from, to] :
       {std::pair<std::string, std::string>{"@media screen", "@media not all"}, {"@media print", "@media all"}}) {
    REQUIRE(page.find(from) != std::string::npos);
    for (std::size_t at = 0; (at = page.find(from, at)) != std::string::npos; at += to.size()) page.replace(at, from.size(), to);
  }
  return page;
}

// The three rudders, and one under names that try a page: markup, an emoji, as many letters without a space as a job takes.
std::vector<std::pair<std::string, std::string>> reports(const Folder& folder) {
  std::vector<std::pair<std::string, std::string>> out;
  for (const char* name : {"whimbrel", "turnstone", "dunlin"}) {
    REQUIRE(run({"plan", profile(name), "-o", folder.at(name), "--quiet"}).status == 0);
    out.emplace_back(name, bytes_of(folder.at(std::string(name) + "/report.html")));
  }
  std::string job = bytes_of(profile("dunlin"));
  for (const auto& [from, to] :
       {std::pair<std::string, std::string>{"\"name\": \"1\"", "\"name\": \"<b>&'\xf0\x9f\x90\xa6" + std::string(70, 'W') + "\""},
        {"Dunlin, skeg-hung rudder", std::string(50, 'M') + "</h1><script>alert(1)"},
        {"\"max_removal\": 0.0625", "\"thickness\": \"25%\""}}) {
    REQUIRE(job.find(from) != std::string::npos);
    job.replace(job.find(from), from.size(), to);
  }
  const Result odd = run({"plan", folder.write("odd.json", job), "-o", folder.at("odd"), "--quiet"});
  INFO(odd.err);
  REQUIRE(odd.status == 0);
  out.emplace_back("odd", bytes_of(folder.at("odd/report.html")));
  return out;
}

}  // namespace

TEST_CASE("the report on a telephone, on a desk and on A4, in a browser") {
  INFO("this test needs chromium, pdfinfo and xmllint: apt-get install chromium poppler-utils libxml2-utils");
  REQUIRE(installed("chromium"));
  REQUIRE(installed("pdfinfo"));
  REQUIRE(installed("xmllint"));
  const Folder folder;
  const auto pages = reports(folder);
  std::vector<Shown> shown;
  for (const auto& [name, page] : pages) {
    CHECK(std::system(("xmllint --noout " + folder.at(name + "/report.html")).c_str()) == 0);
    for (const int width : {390, 1280}) shown.push_back({name + " at " + std::to_string(width), page, width});
    shown.push_back({name + " on A4", as_printed(page), 688});  // 210 mm less two margins of 14, at 96 to the inch
  }
  const Json found = measured(folder, shown);
  REQUIRE(found.size() == shown.size());
  for (const Json& one : found) {
    INFO(one.dump());
    CHECK(one["scroll"].get<double>() <= one["inner"].get<double>());
    CHECK(one["clipped"].empty());
    CHECK(one["low"].empty());
    CHECK(one["least"].get<double>() >= 4.5);  // WCAG 2 AA; seen 8.8
    CHECK(one["texts"].get<int>() > 500);
    CHECK(one["pictures"].get<int>() >= 4);  // one a station at least, none without size
    CHECK(one["scripts"] == 0);
    CHECK(one["ids"] == 0);
  }
  for (const char* name : {"whimbrel", "odd"}) {
    const std::string pdf = folder.at(std::string(name) + ".pdf");
    output_of(chromium(
        folder, "--no-pdf-header-footer --print-to-pdf=" + pdf + " file://" + folder.at(std::string(name) + "/report.html")));
    const std::string info = output_of("pdfinfo " + pdf);
    INFO(name << "\n" << info);
    CHECK(has(info, "(A4)"));
    const std::size_t at = info.find("Pages:");
    REQUIRE(at != std::string::npos);
    const int sheets = std::stoi(info.substr(at + 6));
    CHECK(sheets >= 4);
    CHECK(sheets <= 30);  // seen 17, and fewer for the other
  }
}
