#include "tackfree/text/screens.hpp"

#include "tackfree/document/choices_section.hpp"
#include "tackfree/document/left_over_section.hpp"
#include "tackfree/document/log_sections.hpp"
#include "tackfree/document/outlook_section.hpp"
#include "tackfree/document/tonight_section.hpp"

namespace tackfree {

std::string tonight_text(const Plan& plan, const Tonight& tonight, int columns, Ink ink) {
  TextPage page(columns, ink);
  write_tonight(page, plan, tonight);
  return page.text();
}

std::string choices_text(const Choices& choices, int columns, Ink ink) {
  TextPage page(columns, ink);
  write_choices(page, choices);
  return page.text();
}

std::string outlook_text(const Job& job, const CoatOutlook& outlook, int columns, Ink ink) {
  TextPage page(columns, ink);
  write_outlook(page, job, outlook);
  return page.text();
}

std::string shelf_text(const WorkAtHand& work, int columns, Ink ink) {
  TextPage page(columns, ink);
  write_shelf(page, work);
  return page.text();
}

std::string understood_text(const UnderstoodReport& told, int columns) {
  TextPage page(columns);
  write_understood(page, told);
  return page.text();
}

std::string log_text(const Job& job, int columns) {
  TextPage page(columns);
  write_log(page, job);
  return page.text();
}

}  // namespace tackfree
