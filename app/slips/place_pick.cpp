// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/place_pick.h"

#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/slips/slip_words.h"
#include "core/trade/limits.h"
#include "db/actions/film_actions.h"

#include <QCoreApplication>

#include <algorithm>
#include <tuple>

namespace holdfast::app {

namespace {

class PlacePickWords {
    Q_DECLARE_TR_FUNCTIONS(PlacePickWords)
};

bool hasFilm(const ShopFacts& facts, PlaceId place) {
    return std::ranges::any_of(facts.rolls, [&](const FilmRoll& roll) {
        return roll.state == RollState::OnShelf && roll.placeNow() == place;
    });
}

} // namespace

PlacePick::PlacePick(Form& form, ShopDesk& desk, const QString& label, std::optional<PlaceId> chosen,
                     PlacesFor what)
    : m_form(form) {
    QVector<PickItem> items;
    int at = -1;
    const ShopFacts& facts = desk.shop()->facts;
    for (const StoragePlace& place : facts.places) {
        const bool isRead = what == PlacesFor::Readings && (chosen == place.id || hasFilm(facts, place.id));
        if (place.isRetired && !isRead)
            continue;
        if (chosen == place.id)
            at = static_cast<int>(m_places.size());
        m_places.push_back(place.id);
        items.append({words(place.name)});
    }
    items.append({PlacePickWords::tr("A new storage place")});
    if (m_places.empty())
        at = 0;
    form.list("place", label, items, at);
    // The first of a shop need not be named by the person: there is only one.
    form.line("placeName", PlacePickWords::tr("Name of the storage place"),
              m_places.empty() ? PlacePickWords::tr("Shelf") : QString());
    form.alsoNamed("name", "placeName");
    showName();
    QObject::connect(&form, &Form::edited, &form, [this] { showName(); });
}

std::optional<PlaceId> PlacePick::known() const {
    const auto* list = m_form.findChild<PickList*>(QStringLiteral("place"));
    const int at = list ? list->currentIndex() : -1;
    if (at < 0 || at >= static_cast<int>(m_places.size()))
        return std::nullopt;
    return m_places[static_cast<std::size_t>(at)];
}

void PlacePick::showName() {
    const auto* list = m_form.findChild<PickList*>(QStringLiteral("place"));
    m_form.setShown("placeName", list && list->currentIndex() == static_cast<int>(m_places.size()));
}

void PlacePick::check() {
    m_form.chosen("place");
    if (known() || !m_form.errorAt("place").isEmpty())
        return;
    const auto name = typedText(plain(m_form.text("placeName")),
                                {.field = "name", .what = phrase("The place’s name"), .most = 60});
    if (!name.ok())
        m_form.showError(name.error());
}

ChosenPlace PlacePick::chosen() const {
    return {known(), plain(m_form.text("placeName"))};
}

Result<PlaceId> ChosenPlace::in(db::Shop& shop) const {
    return known ? Result<PlaceId>{*known} : db::addPlace(shop, newName);
}

std::optional<PlaceId> lastUsedPlace(const ReckonedShop& shop) {
    std::optional<RollStay> last;
    for (const FilmRoll& roll : shop.facts.rolls)
        if (!roll.stays.empty() && (!last || roll.stays.back().since >= last->since))
            last = roll.stays.back();
    if (last)
        return last->place;
    if (shop.facts.places.size() == 1)
        return shop.facts.places.begin()->id;
    return std::nullopt;
}

std::optional<PlaceId> stalestPlace(const ReckonedShop& shop) {
    std::optional<PlaceId> stalest;
    std::tuple<bool, Instant> least;
    for (const StoragePlace& place : shop.facts.places) {
        if (place.isRetired && !hasFilm(shop.facts, place.id))
            continue;
        const auto latest = latestReading(shop, place.id);
        const std::tuple waits{!hasFilm(shop.facts, place.id), latest ? latest->at : Instant{}};
        if (!stalest || waits < least) {
            stalest = place.id;
            least = waits;
        }
    }
    return stalest;
}

} // namespace holdfast::app
