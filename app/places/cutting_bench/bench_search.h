// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once
// Looks for a shorter nest beside the window while the maker works on.

#include "app/desk/beside.h"
#include "core/cutting/nest.h"
#include "core/shop/films_to_cut.h"

#include <QObject>

#include <memory>

namespace holdfast::app {

class BenchSearch : public QObject {
    Q_OBJECT

public:
    using QObject::QObject;

    // Drops a search under way. `how` counts work, so that the same wish gives the same nest however busy the
    // machine is; its shouldStop and worked are set here.
    void begin(std::shared_ptr<const ReckonedShop> shop, const FilmToCut& film, const NestWish& wish,
               const StripSearch& how);
    void stop() { m_beside.stop(); } // found() comes with the best so far
    void drop();                     // nothing comes
    bool isSearching() const { return m_beside.isUnderWay(); }

signals:
    void progressed(double share); // of its work, 0 to 1
    void found(const holdfast::FilmNests& nests);
    void ended(); // found, dropped or in vain

private:
    Beside<Result<FilmNests>> m_beside;
};

} // namespace holdfast::app
