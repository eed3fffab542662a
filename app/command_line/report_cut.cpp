// SPDX-License-Identifier: GPL-3.0-or-later
// report cut: what waits to be cut, film by film, nested on the rolls there are.
#include "app/command_line/reports.h"
#include "app/command_line/text_table.h"
#include "app/desk/formats.h"
#include "core/cutting/percent_shares.h"
#include "core/shop/films_to_cut.h"

#include <QCoreApplication>
#include <QJsonArray>

#include <cmath>
#include <map>

namespace holdfast::app {

namespace {

// By rounds and not by time, so that the same shop gives the same report.
constexpr std::uint64_t kRounds = 200;
constexpr std::chrono::milliseconds kAtMost{10'000};

qint64 number(Millimetres length) {
    return length.value;
}

class CutReport {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::CutReport)

public:
    explicit CutReport(const ReckonedShop& shop)
        : m_shop(shop) {
        for (const Garment& garment : shop.facts.garments)
            for (const Decal& decal : garment.decals)
                m_decals[decal.id] = {&garment, &decal};
        StripSearch search;
        search.budget = kAtMost;
        search.rounds = kRounds;
        for (FilmToCut& film : filmsToCut(shop)) {
            auto nests = nestFilm(shop, film, usualWish(shop, film), &search);
            OneFilm one{std::move(film), {}, {}};
            if (nests.ok())
                one.nests = std::move(nests).value();
            else
                one.problem = nests.error().message;
            m_films.push_back(std::move(one));
        }
    }

    QString text() const {
        QString whole = reportTitle(tr("To cut"), m_shop);
        if (m_films.empty())
            return whole + tr("Nothing waits to be cut.") + QLatin1Char('\n');
        for (const OneFilm& film : m_films)
            whole += filmText(film) + QLatin1Char('\n');
        whole.chop(1);
        return whole;
    }

    QJsonObject json() const {
        QJsonObject whole = reportHead("cut", m_shop);
        QJsonArray films;
        for (const OneFilm& film : m_films)
            films.append(filmJson(film));
        whole.insert(QStringLiteral("films"), films);
        return whole;
    }

private:
    struct OneFilm {
        FilmToCut toCut;
        FilmNests nests;
        Sentence problem;
    };
    struct OnGarment {
        const Garment* garment = nullptr;
        const Decal* decal = nullptr;
    };

    QString filmName(const OneFilm& film) const {
        return words(m_shop.facts.films.at(film.toCut.film).name());
    }
    QString rollName(RollId roll) const { return words(m_shop.facts.rolls.at(roll).label()); }
    QString decalName(DecalId id) const {
        const OnGarment& on = m_decals.at(id);
        return tr("%1 %2").arg(words(m_shop.facts.labelOf(*on.garment)), words(on.decal->describe()));
    }

    QString filmText(const OneFilm& film) const {
        QString whole =
            tr("%1, %2 to cut").arg(filmName(film)).arg(film.toCut.waiting.size()) + QLatin1Char('\n');
        for (const RollOffer& offer : film.toCut.rolls)
            whole += QStringLiteral("  %1: %2\n").arg(rollName(offer.roll), words(offer.reason));
        if (!film.problem.empty())
            whole += QStringLiteral("  %1\n").arg(words(film.problem));
        for (const Nest& nest : film.nests.nests)
            whole += nestText(nest);
        for (const auto& [id, why] : film.nests.lack)
            whole += tr("  %1 lies on no roll: %2").arg(decalName(id), words(why)) + QLatin1Char('\n');
        for (const auto& [id, why] : film.toCut.notYet)
            whole += tr("  %1 is not to be cut yet: %2").arg(decalName(id), words(why)) + QLatin1Char('\n');
        return whole;
    }

    QString nestText(const Nest& nest) const {
        const PercentShares shares = inPercent(nest.shares());
        QString whole = tr("  On %1: %2 used, %3 at least, %4 % decals and frames, %5 % offcuts, %6 % lost "
                           "in this cut, gap %7")
                            .arg(rollName(nest.roll), millimetres(nest.length), millimetres(nest.leastLength))
                            .arg(shares.decals)
                            .arg(shares.offcuts)
                            .arg(shares.lost)
                            .arg(millimetres(nest.gap)) +
                        QLatin1Char('\n');
        using Side = TextTable::Side;
        TextTable table({{tr("Garment")},
                         {tr("Decal")},
                         {tr("Wide"), Side::Right},
                         {tr("High"), Side::Right},
                         {tr("Along"), Side::Right},
                         {tr("Across"), Side::Right},
                         {tr("Lies")}});
        for (const NestedDecal& nested : nest.decals) {
            const OnGarment& on = m_decals.at(nested.decal);
            table.add({words(m_shop.facts.labelOf(*on.garment)), words(on.decal->describe()),
                       QString::number(on.decal->width.value), QString::number(on.decal->height.value),
                       QString::number(nested.lies.along.value), QString::number(nested.lies.across.value),
                       nested.isTurned ? tr("width along the roll") : tr("width across the roll")});
        }
        return whole + table.text(4);
    }

    QJsonObject decalJson(DecalId id) const {
        const OnGarment& on = m_decals.at(id);
        return {{QStringLiteral("garment"), words(m_shop.facts.labelOf(*on.garment))},
                {QStringLiteral("decal"), words(on.decal->describe())},
                {QStringLiteral("widthMillimetres"), number(on.decal->width)},
                {QStringLiteral("heightMillimetres"), number(on.decal->height)}};
    }

    QJsonObject nestJson(const Nest& nest) const {
        const FilmShares shares = nest.shares();
        const auto rounded = [](double share) { return std::round(share * 1000) / 1000; };
        QJsonArray decals;
        for (const NestedDecal& nested : nest.decals) {
            QJsonObject each = decalJson(nested.decal);
            each.insert(QStringLiteral("place"),
                        QJsonObject{{QStringLiteral("alongMillimetres"), number(nested.lies.along)},
                                    {QStringLiteral("acrossMillimetres"), number(nested.lies.across)},
                                    {QStringLiteral("widthAlong"), nested.isTurned}});
            decals.append(each);
        }
        QJsonArray offcuts;
        for (const FilmArea& offcut : nest.offcuts)
            offcuts.append(QJsonObject{{QStringLiteral("alongMillimetres"), number(offcut.alongSize)},
                                       {QStringLiteral("acrossMillimetres"), number(offcut.acrossSize)}});
        return {{QStringLiteral("roll"), rollName(nest.roll)},
                {QStringLiteral("rollWidthMillimetres"), number(nest.rollWidth)},
                {QStringLiteral("rollLeftMillimetres"), number(nest.rollLeft)},
                {QStringLiteral("gapMillimetres"), number(nest.gap)},
                {QStringLiteral("lengthMillimetres"), number(nest.length)},
                {QStringLiteral("leastMillimetres"), number(nest.leastLength)},
                {QStringLiteral("shares"), QJsonObject{{QStringLiteral("decals"), rounded(shares.decals)},
                                                       {QStringLiteral("offcuts"), rounded(shares.offcuts)},
                                                       {QStringLiteral("waste"), rounded(shares.waste)}}},
                {QStringLiteral("offcuts"), offcuts},
                {QStringLiteral("decals"), decals}};
    }

    QJsonObject filmJson(const OneFilm& film) const {
        const auto whyNot = [this](const std::map<DecalId, Sentence>& reasons) {
            QJsonArray all;
            for (const auto& [id, why] : reasons) {
                QJsonObject each = decalJson(id);
                each.insert(QStringLiteral("why"), words(why));
                all.append(each);
            }
            return all;
        };
        QJsonArray rolls;
        for (const RollOffer& offer : film.toCut.rolls)
            rolls.append(QJsonObject{{QStringLiteral("roll"), rollName(offer.roll)},
                                     {QStringLiteral("mayBeUsed"), offer.mayBeUsed},
                                     {QStringLiteral("reason"), words(offer.reason)}});
        QJsonArray nests;
        for (const Nest& nest : film.nests.nests)
            nests.append(nestJson(nest));
        return {{QStringLiteral("film"), filmName(film)},
                {QStringLiteral("waiting"), static_cast<qint64>(film.toCut.waiting.size())},
                {QStringLiteral("rolls"), rolls},
                {QStringLiteral("nests"), nests},
                {QStringLiteral("lack"), whyNot(film.nests.lack)},
                {QStringLiteral("notYet"), whyNot(film.toCut.notYet)},
                {QStringLiteral("problem"),
                 film.problem.empty() ? QJsonValue() : QJsonValue(words(film.problem))}};
    }

    const ReckonedShop& m_shop;
    std::map<DecalId, OnGarment> m_decals;
    std::vector<OneFilm> m_films;
};

} // namespace

Report cutReport(const ReckonedShop& shop) {
    const CutReport report{shop};
    return {report.text(), report.json()};
}

} // namespace holdfast::app
