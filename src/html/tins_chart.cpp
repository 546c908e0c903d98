#include "tackfree/html/tins_chart.hpp"

#include "tackfree/html/svg.hpp"
#include "tackfree/words/chart_words.hpp"
#include "tackfree/words/display_text.hpp"
#include "tackfree/words/tins_words.hpp"

#include <algorithm>
#include <utility>

#include <fmt/format.h>

namespace tackfree {

namespace {

struct Product {
  std::string name;
  const TinPurchase* purchase;
};

std::vector<Product> products_of(const Plan& plan) {
  std::vector<Product> products;
  for (const CoatingPurchase& purchase : plan.shopping.coatings)
    products.push_back(
        {cut_to(longest_name, plan.job.coatings.at(purchase.coating).name), &purchase});
  for (const ThinnerPurchase& purchase : plan.shopping.thinners)
    products.push_back({cut_to(longest_name, purchase.liquid), &purchase});
  return products;
}

/// A box for each tin, as wide as it holds, from `x` on.
class TinRow {
 public:
  TinRow(Markup& svg, double width_of_litre) : svg_(svg), width_(width_of_litre) {}

  void tin(std::string_view meaning, Volume holds, std::string_view label) {
    const double width = width_ * holds.in(litres);
    svg_box(svg_, meaning, {x_, top, width, height});
    if (LabelLine::width_of(label) + 4 < width) svg_label(svg_, "mark", {x_ + 4, top + 15}, label);
    x_ += width;
  }

  static constexpr double left = 110, top = 20, height = 22;

 private:
  Markup& svg_;
  double width_;
  double x_ = left;
};

void write_product(Markup& html, const Product& product, const Figures& figures, int number) {
  constexpr double width = 560, right = 500, bar = 12;
  const TinPurchase& purchase = *product.purchase;
  const Volume tins = purchase.on_shelf + purchase.tins.bought;
  const Volume most = std::max(tins, purchase.nine_in_ten);
  if (most <= Volume()) return;
  const double of_litre = (right - TinRow::left) / most.in(litres);
  open_chart(html,
             {fmt::format("tins-{}", number), "Tins of " + product.name,
              fmt::format(chart_words::tins_hold, figures.volume(tins).text(),
                          figures.volume(purchase.expected).text(),
                          figures.volume(purchase.nine_in_ten).text(),
                          figures.volume(purchase.left_over).text())},
             width, 86);
  svg_label(html, "batch", {4, 13}, product.name);
  svg_label(html, "row", {4, 35}, "tins");
  TinRow row(html, of_litre);
  if (purchase.on_shelf > Volume()) row.tin("shelf", purchase.on_shelf, chart_words::on_the_shelf);
  for (std::size_t i = 0; i < purchase.tins.counts.size(); ++i)
    for (int tin = 0; tin < purchase.tins.counts[i]; ++tin)
      row.tin("tin", purchase.sizes.at(i).volume, purchase.sizes.at(i).label);
  double y = 48;
  for (const auto& [legend, volume] :
       {std::pair(LegendEntry{"work", "expected"}, purchase.expected),
        std::pair(LegendEntry{"drying", chart_words::nine_in_ten}, purchase.nine_in_ten)}) {
    const double length = of_litre * volume.in(litres);
    svg_label(html, "row", {4, y + 10}, legend.words);
    svg_box(html, legend.meaning, {TinRow::left, y, length, bar});
    svg_label(html, "mark", {TinRow::left + length + 4, y + 10}, figures.volume(volume).text());
    y += bar + 5;
  }
  close_chart(html);
}

}  // namespace

void write_tins_chart(Markup& html, const Plan& plan, const Figures& figures) {
  HtmlPage page(html);
  const std::vector<Product> products = products_of(plan);
  for (const Product& product : products) {
    const bool buys = product.purchase->tins.bought > Volume();
    page.paragraph(buys ? Lead::to_tick() : Lead::item(),
                   fmt::format(chart_words::tins_left, tins_text(*product.purchase), product.name,
                               figures.volume_both_ways(product.purchase->left_over)));
  }
  page.end();
  if (products.empty()) return;
  write_legend(html, {{"shelf", chart_words::on_the_shelf}, {"tin", "to buy"}});
  int number = 0;
  for (const Product& product : products) write_product(html, product, figures, ++number);
}

}  // namespace tackfree
