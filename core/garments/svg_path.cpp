// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/garments/svg_path.h"

#include <cctype>
#include <cstdlib>
#include <optional>
#include <string>

namespace holdfast {

namespace {

constexpr int kStretches = 24; // of a curve

class PathReader {
public:
    explicit PathReader(std::string_view data)
        : m_data(data) {}

    std::vector<SheetLine> read() {
        while (skipSpace(), m_at < m_data.size()) {
            if (std::isalpha(static_cast<unsigned char>(m_data[m_at])))
                m_command = m_data[m_at++];
            if (!obey())
                break;
        }
        return std::move(m_lines);
    }

private:
    void skipSpace() {
        while (m_at < m_data.size() &&
               (std::isspace(static_cast<unsigned char>(m_data[m_at])) || m_data[m_at] == ','))
            ++m_at;
    }

    std::optional<double> number() {
        skipSpace();
        const std::string rest(m_data.substr(m_at, 32));
        char* end = nullptr;
        const double read = std::strtod(rest.c_str(), &end);
        if (end == rest.c_str())
            return std::nullopt;
        m_at += static_cast<std::size_t>(end - rest.c_str());
        return read;
    }

    // A pair of coordinates; relative ones count from where the command began.
    std::optional<SheetPoint> point() {
        const auto x = number();
        const auto y = number();
        if (!x || !y)
            return std::nullopt;
        return isRelative() ? SheetPoint{m_here.x + *x, m_here.y + *y} : SheetPoint{*x, *y};
    }

    bool isRelative() const { return std::islower(static_cast<unsigned char>(m_command)) != 0; }

    bool obey() {
        switch (std::toupper(static_cast<unsigned char>(m_command))) {
        case 'M':
            return move();
        case 'L':
            return straightTo(point());
        case 'H':
            return along(&SheetPoint::x);
        case 'V':
            return along(&SheetPoint::y);
        case 'C':
            return curve();
        case 'Z':
            return close();
        default:
            return false;
        }
    }

    bool move() {
        const auto to = point();
        if (!to)
            return false;
        m_here = *to;
        m_lines.push_back({{m_here}, false});
        m_command = isRelative() ? 'l' : 'L'; // further pairs are lines
        return true;
    }

    bool straightTo(std::optional<SheetPoint> to) {
        if (!to || m_lines.empty())
            return false;
        if (m_lines.back().isClosed)
            m_lines.push_back({{m_here}, false});
        m_here = *to;
        m_lines.back().points.push_back(m_here);
        return true;
    }

    bool along(double SheetPoint::* coordinate) {
        const auto by = number();
        if (!by)
            return false;
        SheetPoint to = m_here;
        to.*coordinate = isRelative() ? m_here.*coordinate + *by : *by;
        return straightTo(to);
    }

    bool curve() {
        const auto first = point();
        const auto second = point();
        const auto end = point();
        if (!first || !second || !end)
            return false;
        const SheetPoint start = m_here;
        for (int at = 1; at <= kStretches; ++at) {
            const double share = static_cast<double>(at) / kStretches;
            const double left = 1 - share;
            const double weights[] = {left * left * left, 3 * left * left * share, 3 * left * share * share,
                                      share * share * share};
            const auto blend = [&](double SheetPoint::* c) {
                return weights[0] * (start.*c) + weights[1] * ((*first).*c) + weights[2] * ((*second).*c) +
                       weights[3] * ((*end).*c);
            };
            if (!straightTo(SheetPoint{blend(&SheetPoint::x), blend(&SheetPoint::y)}))
                return false;
        }
        m_here = *end;
        return true;
    }

    bool close() {
        if (m_lines.empty())
            return false;
        SheetLine& line = m_lines.back();
        line.isClosed = true;
        m_here = line.points.front();
        if (line.points.size() > 1 && line.points.back() == line.points.front())
            line.points.pop_back();
        m_command = ' '; // a new command must follow
        return true;
    }

    std::string_view m_data;
    std::size_t m_at = 0;
    char m_command = ' ';
    SheetPoint m_here;
    std::vector<SheetLine> m_lines;
};

} // namespace

std::vector<SheetLine> linesOfPath(std::string_view data) {
    return PathReader{data}.read();
}

} // namespace holdfast
