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
    if (line_.takes(x_, label)) svg_label(svg_, "mark", {x_, top + height + 15}, label);
    x_ += width;
  }

  static constexpr double left = 4, top = 0, height = 22;

 private:
  Markup& svg_;
  double width_;
  double x_ = left;
  LabelLine line_;
};

void write_product(Markup& html, const Product& product, const Figures& figures, int number) {
  constexpr double width = 328, right = width - 4, bar = 10;
  const TinPurchase& purchase = *product.purchase;
  const Volume tins = purchase.on_shelf + purchase.tins.bought;
  const Volume most = std::max(tins, purchase.nine_in_ten);
  if (most <= Volume()) return;
  const double of_litre = (right - TinRow::left) / most.in(litres);
  double y = TinRow::height + label_line + row_gap;
  open_chart(html,
             {fmt::format("tins-{}", number), "Tins of " + product.name,
              fmt::format(chart_words::tins_hold, figures.volume(tins).text(),
                          figures.volume(purchase.expected).text(),
                          figures.volume(purchase.nine_in_ten).text(),
                          figures.volume(purchase.left_over).text()),
              product.name},
             width, y + 2 * (label_line + bar + row_gap));
  TinRow row(html, of_litre);
  if (purchase.on_shelf > Volume()) row.tin("shelf", purchase.on_shelf, chart_words::on_the_shelf);
  for (std::size_t i = 0; i < purchase.tins.counts.size(); ++i)
    for (int tin = 0; tin < purchase.tins.counts[i]; ++tin)
      row.tin("tin", purchase.sizes.at(i).volume, purchase.sizes.at(i).label);
  for (const auto& [legend, volume] :
       {std::pair(LegendEntry{"expected", chart_words::expected_use}, purchase.expected),
        std::pair(LegendEntry{"ninety", chart_words::nine_in_ten}, purchase.nine_in_ten)}) {
    svg_label(
        html, "row", {TinRow::left, y + letter_height},
        fmt::format(chart_words::share_of_limit, legend.words, figures.volume(volume).text()));
    svg_box(html, legend.meaning,
            {TinRow::left, y + label_line, of_litre * volume.in(litres), bar});
    y += label_line + bar + row_gap;
  }
  close_chart(html);
}

}  // namespace

void write_tins(Markup& html, const Plan& plan, const Figures& figures) {
  HtmlPage page(html);
  for (const Product& product : products_of(plan)) {
    const bool buys = product.purchase->tins.bought > Volume();
    page.paragraph(buys ? Lead::to_tick() : Lead::item(),
                   fmt::format(chart_words::tins_left, tins_text(*product.purchase), product.name,
                               figures.volume_both_ways(product.purchase->left_over)));
  }
  page.end();
}

void write_tins_chart(Markup& html, const Plan& plan, const Figures& figures) {
  const std::vector<Product> products = products_of(plan);
  if (products.empty()) return;
  write_legend(html, {{"shelf", chart_words::on_the_shelf}, {"tin", "to buy"}});
  html.open("div", {{"class", "strips"}});
  int number = 0;
  for (const Product& product : products) write_product(html, product, figures, ++number);
  html.close();
}

}  // namespace tackfree
