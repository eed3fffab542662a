// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/cutting/offcuts.h"

#include <algorithm>
#include <tuple>

namespace holdfast {

namespace {

Millimetres endAcross(const FilmArea& area) {
    return area.across + area.acrossSize;
}

Millimetres endAlong(const FilmArea& area) {
    return area.along + area.alongSize;
}

bool overlap(const FilmArea& one, const FilmArea& other) {
    return one.across < endAcross(other) && other.across < endAcross(one) && one.along < endAlong(other) &&
           other.along < endAlong(one);
}

bool contains(const FilmArea& outer, const FilmArea& inner) {
    return outer.across <= inner.across && endAcross(inner) <= endAcross(outer) &&
           outer.along <= inner.along && endAlong(inner) <= endAlong(outer);
}

// All empty rectangles that cannot grow, as far as they are large enough; smaller ones hold none that is.
class EmptyAreas {
public:
    EmptyAreas(const FilmArea& film, Millimetres smallest)
        : m_smallest(smallest) {
        add(film);
    }

    void take(const FilmArea& taken) {
        std::vector<FilmArea> before;
        std::swap(before, m_areas);
        std::vector<FilmArea> cut;
        for (const FilmArea& area : before) {
            if (overlap(area, taken))
                cut.push_back(area);
            else
                m_areas.push_back(area);
        }
        for (const FilmArea& area : cut)
            addAround(area, taken);
        dropContained();
    }

    const FilmArea* largest() const {
        const auto found = std::ranges::max_element(m_areas, {}, [](const FilmArea& area) {
            return std::tuple{area.area(), -area.along.value, -area.across.value};
        });
        return found == m_areas.end() ? nullptr : &*found;
    }

private:
    void add(const FilmArea& area) {
        if (area.acrossSize >= m_smallest && area.alongSize >= m_smallest)
            m_areas.push_back(area);
    }

    void addAround(const FilmArea& area, const FilmArea& taken) {
        add({area.across, area.along, taken.across - area.across, area.alongSize});
        add({endAcross(taken), area.along, endAcross(area) - endAcross(taken), area.alongSize});
        add({area.across, area.along, area.acrossSize, taken.along - area.along});
        add({area.across, endAlong(taken), area.acrossSize, endAlong(area) - endAlong(taken)});
    }

    void dropContained() {
        for (std::size_t one = 0; one < m_areas.size(); ++one) {
            for (std::size_t other = m_areas.size(); other-- > one + 1;) {
                if (contains(m_areas[one], m_areas[other])) {
                    m_areas.erase(m_areas.begin() + static_cast<std::ptrdiff_t>(other));
                } else if (contains(m_areas[other], m_areas[one])) {
                    m_areas[one] = m_areas[other];
                    m_areas.erase(m_areas.begin() + static_cast<std::ptrdiff_t>(other));
                    other = m_areas.size();
                }
            }
        }
    }

    Millimetres m_smallest;
    std::vector<FilmArea> m_areas;
};

} // namespace

std::vector<FilmArea> offcutsOf(const FilmArea& film, std::span<const FilmArea> taken, Millimetres smallest,
                                std::size_t most) {
    EmptyAreas empty(film, smallest);
    for (const FilmArea& area : taken)
        empty.take(area);
    std::vector<FilmArea> offcuts;
    while (offcuts.size() < most) {
        const FilmArea* largest = empty.largest();
        if (!largest)
            break;
        offcuts.push_back(*largest);
        empty.take(offcuts.back());
    }
    return offcuts;
}

} // namespace holdfast
