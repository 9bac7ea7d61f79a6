// SPDX-License-Identifier: GPL-3.0-or-later
#include "kit/stock_of.h"

#include "kit/values.h"

namespace qw::kit {

Stock stock_of(const Manifest& manifest, const Pipeline& pipeline, const std::string& name) {
    const Stock* found = pipeline.stock(name);
    if (!found) {
        Lookup stocks{"a stock", "pipeline/stocks.yaml", {}};
        for (const Stock& stock : pipeline.stocks) stocks.known.push_back(stock.name);
        Faults faults;
        tell_unknown_name("unknown-name", {"pipeline/stocks.yaml", 0, 0}, name, stocks, faults);
        faults.throw_if_any();
    }
    Stock stock = *found;
    const auto own = manifest.calipers.find(name);
    if (own != manifest.calipers.end()) stock.caliper = own->second;
    return stock;
}

}  // namespace qw::kit
