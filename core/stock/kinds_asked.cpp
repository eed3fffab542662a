// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/stock/kinds_asked.h"

namespace holdfast {

namespace {

struct MeanAndVariance {
    double mean = 0;
    double variance = 0; // with n − 1; nothing of one
};

MeanAndVariance ofPeriods(std::span<const std::int64_t> periods) {
    MeanAndVariance of;
    const auto count = static_cast<double>(periods.size());
    for (const std::int64_t sold : periods)
        of.mean += static_cast<double>(sold) / count;
    if (periods.size() < 2)
        return of;
    for (const std::int64_t sold : periods) {
        const double off = static_cast<double>(sold) - of.mean;
        of.variance += off * off / (count - 1);
    }
    return of;
}

// What a share of a style's garments is asked for over a number of periods.
Demand shareOf(const MeanAndVariance& inOne, std::int64_t known, double share, double periods) {
    const double mean = inOne.mean * share * periods;
    if (!spreadsMoreThanChance(inOne.mean, inOne.variance, known))
        return {mean, mean};
    const double size = inOne.mean * inOne.mean / (inOne.variance - inOne.mean) * periods;
    return {mean, mean + mean * mean / size};
}

std::vector<std::vector<std::int64_t>> tableOf(const BlankStyle& style,
                                               const std::map<BlankKind, std::int64_t>& sold) {
    std::vector<std::vector<std::int64_t>> table;
    for (const std::string& size : style.sizes) {
        table.emplace_back();
        for (const Colour& colour : style.colours) {
            const auto found = sold.find({style.id, size, colour.id});
            table.back().push_back(found == sold.end() ? 0 : found->second);
        }
    }
    return table;
}

} // namespace

std::vector<std::vector<double>> drawnTogether(const std::vector<std::vector<std::int64_t>>& sold) {
    std::vector<double> ofRow, ofColumn;
    double all = 0, squares = 0;
    for (const auto& row : sold) {
        ofRow.push_back(0);
        ofColumn.resize(row.size());
        for (std::size_t column = 0; column < row.size(); ++column) {
            const auto count = static_cast<double>(row[column]);
            ofRow.back() += count;
            ofColumn[column] += count;
            all += count;
            squares += count * count;
        }
    }
    std::vector<std::vector<double>> shares;
    double apart = 0;
    for (std::size_t row = 0; row < sold.size(); ++row) {
        shares.emplace_back();
        for (std::size_t column = 0; column < sold[row].size(); ++column) {
            const double expected = all > 0 ? ofRow[row] * ofColumn[column] / all : 0;
            const double off = static_cast<double>(sold[row][column]) - expected;
            apart += off * off;
            shares.back().push_back(all > 0 ? expected / all : 0);
        }
    }
    // Where sizes and colours fix each cell exactly, there is nothing to draw.
    if (apart <= 1e-12 * all * all)
        return shares;
    const double weight = (all * all - squares) / apart;
    for (std::size_t row = 0; row < sold.size(); ++row)
        for (std::size_t column = 0; column < sold[row].size(); ++column)
            shares[row][column] =
                (static_cast<double>(sold[row][column]) + weight * shares[row][column]) / (all + weight);
    return shares;
}

std::vector<std::vector<Demand>> kindsAsked(const BlankStyle& style,
                                            const std::map<BlankKind, std::int64_t>& sold,
                                            std::span<const std::int64_t> ofStyle, double periods) {
    const MeanAndVariance inOne = ofPeriods(ofStyle);
    std::vector<std::vector<Demand>> asked;
    for (const auto& row : drawnTogether(tableOf(style, sold))) {
        asked.emplace_back();
        for (const double share : row)
            asked.back().push_back(shareOf(inOne, std::ssize(ofStyle), share, periods));
    }
    return asked;
}

} // namespace holdfast
