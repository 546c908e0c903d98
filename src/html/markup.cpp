#include "tackfree/html/markup.hpp"

#include "tackfree/words/display_text.hpp"

#include <stdexcept>

namespace tackfree {

std::string escaped_markup(std::string_view text) {
  std::string result;
  for (const char c : cut_to(longest_shown, text)) switch (c) {
      case '&':
        result += "&amp;";
        break;
      case '<':
        result += "&lt;";
        break;
      case '>':
        result += "&gt;";
        break;
      case '"':
        result += "&quot;";
        break;
      case '\'':
        result += "&#39;";
        break;
      default:
        result += c;
    }
  return result;
}

void Markup::tag(std::string_view name, Attributes attributes, std::string_view end) {
  text_.append("<").append(name);
  for (const auto& [key, value] : attributes) {
    text_.append(" ").append(key);
    if (!value.empty()) text_.append("=\"").append(escaped_markup(value)).append("\"");
  }
  text_.append(end);
}

void Markup::open(std::string_view tag, Attributes attributes) {
  this->tag(tag, attributes, ">");
  open_.emplace_back(tag);
}

void Markup::close() {
  if (open_.empty()) throw std::logic_error("markup: no element is open");
  text_.append("</").append(open_.back()).append(">");
  // A line end where no text can stand next to it keeps the file readable.
  if (open_.back() != "b" && open_.back() != "bdi" && open_.back() != "span") text_ += "\n";
  open_.pop_back();
}

void Markup::element(std::string_view tag, Attributes attributes, std::string_view text) {
  open(tag, attributes);
  this->text(text);
  close();
}

void Markup::lone(std::string_view tag, Attributes attributes) { this->tag(tag, attributes, ">"); }

void Markup::text(std::string_view text) { text_ += escaped_markup(text); }

void Markup::isolated(std::string_view text) { element("bdi", {}, text); }

}  // namespace tackfree
