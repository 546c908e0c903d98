// Trade text reader: how-to lines, advice and cautions of the finishing data.
#pragma once

#include "tackfree/input/figure_reader.hpp"
#include "tackfree/model/finishing_data.hpp"

#include <string>

namespace tackfree {

/// A parsed file and its name for Problems.
struct TextFileTree {
  const JsonNode& tree;
  const std::string& name;
};

struct TradeTextFiles {
  TextFileTree how, advice, cautions;
};

TradeTexts read_trade_texts(const TradeTextFiles& files, const SourceNames& sources,
                            Problems& problems);

/// Reports classes whose cautions or advice name texts that are not there.
void check_text_keys(const FinishingData& data, const std::string& coatings_file,
                     Problems& problems);

}  // namespace tackfree
