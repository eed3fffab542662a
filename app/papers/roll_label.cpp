// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/papers/roll_label.h"

#include "app/desk/formats.h"
#include "core/trade/paper_code.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

constexpr QSizeF kLabelSize{70, 40};
constexpr double kEdge = 4;
constexpr double kLabelBesideCode = 40; // wide
constexpr Days kYearIsPlain{300};

constexpr PaperType kLabelNumber{13, QFont::Bold};
constexpr PaperType kLabelFilm{3.9, QFont::DemiBold};
constexpr PaperType kLabelPlain{3, QFont::Normal};
constexpr PaperType kLabelUseBy{4.2, QFont::Bold};
constexpr PaperType kLabelSmall{2.4, QFont::Normal};

struct LabelWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::RollLabel)

public:
    QString number;
    std::string code;
    QString film;
    QString received;
    QString useBy;
    QString asOf;
};

// "Use by 7 Jan 2027 (2–20 Jan)": its range has the year only where it lies far from the day.
QString useByWords(const RollCondition& condition) {
    const QString day = date(*condition.useBy);
    if (!condition.useByRange)
        return LabelWords::tr("Use by %1").arg(day);
    const DaySpan& range = *condition.useByRange;
    const bool isNear =
        *condition.useBy - range.first < kYearIsPlain && range.last - *condition.useBy < kYearIsPlain;
    return LabelWords::tr("Use by %1 (%2)")
        .arg(day, isNear ? valueWords(NearSpan{range}) : valueWords(range));
}

QString whyThatDay(const RollCondition& condition, const QString& today) {
    if (condition.useByIsEstimate)
        return LabelWords::tr("an estimate of %1; heat brings it forward").arg(today);
    return condition.extendedByStrip ? LabelWords::tr("by its test strip; as of %1").arg(today)
                                     : LabelWords::tr("the day printed by its maker; as of %1").arg(today);
}

LabelWords labelWords(const ReckonedShop& shop, RollId id) {
    const FilmRoll& roll = shop.facts.rolls.at(id);
    LabelWords label;
    label.number = words(roll.label());
    label.code = paperCode(roll.label(), roll.id.value);
    label.film = words(shop.facts.films.at(roll.film).name());
    label.received =
        LabelWords::tr("%1 wide, received %2").arg(millimetres(roll.width), date(roll.receivedOn));
    const RollCondition* condition = shop.conditions.find(id);
    if (condition && condition->useBy) {
        label.useBy = useByWords(*condition);
        label.asOf = whyThatDay(*condition, date(shop.now.today()));
    } else {
        label.useBy = LabelWords::tr("No use-by given");
    }
    return label;
}

} // namespace

Paper labelOfRoll(const ReckonedShop& shop, RollId roll) {
    const LabelWords label = labelWords(shop, roll);
    return {QStringLiteral("roll-label-%1").arg(label.number), kLabelSize, [label](PaperInk& ink) {
                const double width = kLabelSize.width() - 2 * kEdge;
                ink.line({kEdge, 13}, label.number,
                         shrunkTo(kLabelBesideCode, label.number, kLabelNumber, 6));
                ink.code({44, 1.6, 24, 24}, label.code);
                PaperType film = kLabelFilm;
                while (film.millimetres > 2.4 && brokenInto(kLabelBesideCode, label.film, film).size() > 2)
                    film.millimetres -= 0.1;
                ink.lines({kEdge, 15}, kLabelBesideCode, label.film, film);
                ink.line({kEdge, 29.4}, label.received, shrunkTo(width, label.received, kLabelPlain, 2.2));
                ink.line({kEdge, 34}, label.useBy, shrunkTo(width, label.useBy, kLabelUseBy, 2.6));
                ink.line({kEdge, 37.4}, label.asOf, shrunkTo(width, label.asOf, kLabelSmall, 1.8));
            }};
}

} // namespace holdfast::app
