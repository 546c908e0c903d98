#include "tackfree/html/html_page.hpp"

#include "tackfree/base/name.hpp"
#include "tackfree/words/display_text.hpp"

#include <algorithm>
#include <array>

namespace tackfree {

namespace {

/// Columns of text beside each other, with a gap between them.
std::size_t columns_of(const Table& table) {
  std::vector<std::size_t> widest(table.head.size(), 0);
  const auto measure = [&](const std::vector<std::string>& row) {
    for (std::size_t i = 0; i < row.size(); ++i)
      widest.at(i) = std::max(widest.at(i), display_width(row[i]));
  };
  measure(table.head);
  for (const auto& row : table.rows) measure(row);
  std::size_t all = 0;
  for (const std::size_t each : widest) all += each + 2;
  return all;
}

/// With the head of its column at each cell where `heads` is not empty; cards leave out what is
/// "-".
// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): as a table has them
void write_row(Markup& html, const std::vector<std::string>& row,
               const std::vector<std::string>& heads) {
  html.open("tr");
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (i == 0)
      html.open("th", {{"scope", "row"}});
    else if (heads.empty())
      html.open("td");
    else if (row[i] == "-")
      html.open("td", {{"class", "none"}, {"data-head", heads.at(i)}});
    else
      html.open("td", {{"data-head", heads.at(i)}});
    if (!row[i].empty()) html.isolated(row[i]);
    html.close();
  }
  html.close();
}

}  // namespace

std::string anchor_of(std::string_view title) { return slug(title); }

void HtmlPage::begin_list(List list) {
  if (list == list_) return;
  end_list();
  list_ = list;
  constexpr std::array<std::string_view, 5> classes{"", "points", "warnings", "boxes", "terms"};
  if (list == List::none) return;
  html_.open(list == List::terms ? "dl" : "ul",
             {{"class", std::string(classes.at(static_cast<std::size_t>(list)))}});
}

void HtmlPage::end_list() {
  if (list_ != List::none) html_.close();
  list_ = List::none;
}

void HtmlPage::end() {
  end_list();
  for (; open_ > 0; --open_) html_.close();
}

void HtmlPage::line(std::size_t /*indent*/, std::string_view text) {
  end_list();
  html_.element("p", {}, text);
}

void HtmlPage::heading(std::string_view title) {
  end();
  open_ = 1;
  if (sections_ == Sections::plain) {
    html_.open("section", {{"id", anchor_of(title)}});
    html_.element("h2", {}, title);
    return;
  }
  if (sections_ == Sections::folded)
    html_.open("details", {{"class", "more"}, {"id", anchor_of(title)}});
  else
    html_.open("details", {{"class", "more"}, {"id", anchor_of(title)}, {"open", ""}});
  html_.open("summary");
  html_.element("h2", {}, title);
  html_.close();
}

void HtmlPage::subheading(std::string_view title) {
  end_list();
  html_.open("h3");
  html_.isolated(title);
  html_.close();
}

void HtmlPage::paragraph(Lead lead, std::string_view text) {
  if (text.empty()) return;
  switch (lead.kind) {
    case Lead::Kind::plain:
      end_list();
      html_.element("p", {}, text);
      return;
    case Lead::Kind::item:
    case Lead::Kind::look:
      begin_list(lead.kind == Lead::Kind::item ? List::points : List::warnings);
      html_.element("li", {}, text);
      return;
    case Lead::Kind::to_tick:
      return box(lead.label, text);
    case Lead::Kind::question:
      return term("?", text);
    case Lead::Kind::ticked:
      return term("[x] " + std::string(lead.label), text);
    case Lead::Kind::labelled:
    case Lead::Kind::introduced:
    case Lead::Kind::timed:
      return term(lead.label, text);
    case Lead::Kind::warning:
      return term(lead.label, text, "warning");
    case Lead::Kind::danger:
      return term(lead.label, text, "danger");
  }
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): as a paragraph has them
void HtmlPage::box(std::string_view amount, std::string_view text) {
  begin_list(List::boxes);
  html_.open("li");
  html_.open("label");
  html_.lone("input", {{"type", "checkbox"}});
  if (!amount.empty()) {
    html_.element("b", {}, amount);
    html_.raw(" ");
  }
  html_.isolated(text);
  html_.close();
  html_.close();
}

// NOLINTNEXTLINE(bugprone-easily-swappable-parameters): as a paragraph has them
void HtmlPage::term(std::string_view label, std::string_view text, std::string_view meaning) {
  begin_list(List::terms);
  if (meaning.empty())
    html_.open("div");
  else
    html_.open("div", {{"class", std::string(meaning)}});
  html_.open("dt");
  html_.isolated(label);
  html_.close();
  html_.open("dd");
  html_.isolated(text);
  html_.close();
  html_.close();
}

void HtmlPage::table(const Table& table) {
  constexpr std::size_t phone_columns = 36;
  end_list();
  if (table.head.empty()) return;
  const bool cards = columns_of(table) > phone_columns;
  const std::vector<std::string> heads = cards ? table.head : std::vector<std::string>();
  if (cards)
    html_.open("table", {{"class", "cards"}});
  else
    html_.open("table");
  html_.open("thead");
  html_.open("tr");
  for (const std::string& head : table.head) html_.element("th", {{"scope", "col"}}, head);
  html_.close();
  html_.close();
  html_.open("tbody");
  for (const auto& row : table.rows) write_row(html_, row, heads);
  html_.close();
  if (!table.total.empty()) {
    html_.open("tfoot");
    write_row(html_, table.total, heads);
    html_.close();
  }
  html_.close();
}

}  // namespace tackfree
