#include "tackfree/html/html_page.hpp"

#include "tackfree/base/name.hpp"

#include <array>

namespace tackfree {

namespace {

void write_row(Markup& html, const std::vector<std::string>& row) {
  html.open("tr");
  for (std::size_t i = 0; i < row.size(); ++i) {
    if (i == 0)
      html.open("th", {{"scope", "row"}});
    else
      html.open("td");
    html.isolated(row[i]);
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
  if (in_section_) html_.close();
  in_section_ = false;
}

void HtmlPage::line(std::size_t /*indent*/, std::string_view text) {
  end_list();
  html_.element("p", {}, text);
}

void HtmlPage::heading(std::string_view title) {
  end();
  title_ = title;
  html_.open("section", {{"id", anchor_of(title)}});
  html_.element("h2", {}, title);
  in_section_ = true;
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
    case Lead::Kind::warning:
    case Lead::Kind::danger:
      return term(lead.label, text);
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
void HtmlPage::term(std::string_view label, std::string_view text) {
  begin_list(List::terms);
  html_.open("div");
  html_.open("dt");
  html_.isolated(label);
  html_.close();
  html_.open("dd");
  html_.isolated(text);
  html_.close();
  html_.close();
}

void HtmlPage::table(const Table& table) {
  end_list();
  if (table.head.empty()) return;
  html_.open("div", {{"class", "wide"},
                     {"tabindex", "0"},
                     {"role", "group"},
                     {"aria-label", "Table: " + title_ + ", " + table.head.front()}});
  html_.open("table");
  html_.open("thead");
  html_.open("tr");
  for (const std::string& head : table.head) html_.element("th", {{"scope", "col"}}, head);
  html_.close();
  html_.close();
  html_.open("tbody");
  for (const auto& row : table.rows) write_row(html_, row);
  html_.close();
  if (!table.total.empty()) {
    html_.open("tfoot");
    write_row(html_, table.total);
    html_.close();
  }
  html_.close();
  html_.close();
}

}  // namespace tackfree
