// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/slips/care_parts.h"

#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/widgets/label.h"

#include <QCoreApplication>

#include <algorithm>
#include <vector>

namespace holdfast::app {

namespace {

// The steps of both editions of the label standard; a figure that is none of them keeps its own row.
constexpr int kWashSteps[] = {0, 30, 40, 50, 60, 70, 95};
constexpr int kIronSteps[] = {0, 110, 120, 150, 160, 200, 210};

class CarePartsWords {
    Q_DECLARE_TR_FUNCTIONS(CarePartsWords)
};

// A list of temperatures with what 0 means before them.
struct Steps {
    std::vector<int> celsius;

    template <std::size_t count>
    Steps(const int (&usual)[count], int own)
        : celsius(std::begin(usual), std::end(usual)) {
        if (std::ranges::find(celsius, own) == celsius.end())
            celsius.push_back(own);
        std::ranges::sort(celsius);
    }

    QVector<PickItem> items(const QString& none, const QString& upTo) const {
        QVector<PickItem> items;
        for (const int step : celsius)
            items.append({step == 0 ? none : upTo.arg(step)});
        return items;
    }

    int placeOf(int step) const {
        return static_cast<int>(std::ranges::find(celsius, step) - celsius.begin());
    }
};

int degreesIn(const QString& text) {
    static const QString digits = QStringLiteral("0123456789");
    QString number;
    for (const QChar letter : text)
        if (digits.contains(letter))
            number += letter;
    return number.toInt(); // "no washing": 0
}

QVector<PickItem> listOf(const QStringList& words) {
    QVector<PickItem> items;
    for (const QString& word : words)
        items.append({word});
    return items;
}

CareLimits careNow(const Form& form) {
    const auto list = [&](const char* name) { return form.findChild<PickList*>(QString::fromLatin1(name)); };
    CareLimits care;
    care.washCelsius = degreesIn(list("careWash")->currentText());
    care.agitation = static_cast<Agitation>(list("careAgitation")->currentIndex());
    care.tumble = static_cast<Tumble>(list("careTumble")->currentIndex());
    care.ironCelsius = degreesIn(list("careIron")->currentText());
    care.bleach = static_cast<Bleach>(list("careBleach")->currentIndex());
    care.cleaning = static_cast<Cleaning>(list("careCleaning")->currentIndex());
    return care;
}

QString careText(const CareLimits& care) {
    QStringList lines;
    for (const Sentence& line : careWords(care))
        lines.append(words(line));
    return CarePartsWords::tr("On the care card: %1.").arg(lines.join(QStringLiteral("; ")));
}

} // namespace

void addCareParts(Form& form, const CareLimits& care) {
    const Steps wash(kWashSteps, care.washCelsius);
    const Steps iron(kIronSteps, care.ironCelsius);
    form.pair();
    form.list("careWash", CarePartsWords::tr("Washing, up to"),
              wash.items(CarePartsWords::tr("no washing"), CarePartsWords::tr("%1 °C")),
              wash.placeOf(care.washCelsius));
    form.list("careAgitation", CarePartsWords::tr("Cycle"),
              listOf({CarePartsWords::tr("by hand"), CarePartsWords::tr("very mild"),
                      CarePartsWords::tr("mild"), CarePartsWords::tr("normal")}),
              static_cast<int>(care.agitation));
    form.pair();
    form.list(
        "careTumble", CarePartsWords::tr("Tumble drying"),
        listOf({CarePartsWords::tr("not at all"), CarePartsWords::tr("low"), CarePartsWords::tr("normal")}),
        static_cast<int>(care.tumble));
    form.list("careIron", CarePartsWords::tr("Ironing, up to"),
              iron.items(CarePartsWords::tr("no ironing"), CarePartsWords::tr("%1 °C")),
              iron.placeOf(care.ironCelsius));
    form.list(
        "careBleach", CarePartsWords::tr("Bleach"),
        listOf({CarePartsWords::tr("none"), CarePartsWords::tr("oxygen only"), CarePartsWords::tr("any")}),
        static_cast<int>(care.bleach));
    // Place 0 to 7 is the set's own number: P counts 1, F 2, wet cleaning 4.
    form.list("careCleaning", CarePartsWords::tr("Professional cleaning"),
              listOf({CarePartsWords::tr("none"), CarePartsWords::tr("solvent P"),
                      CarePartsWords::tr("solvent F"), CarePartsWords::tr("solvent P or F"),
                      CarePartsWords::tr("wet cleaning"), CarePartsWords::tr("solvent P or wet"),
                      CarePartsWords::tr("solvent F or wet"), CarePartsWords::tr("solvent P, F or wet")}),
              static_cast<int>(care.cleaning));
    Label* said = form.note(careText(care));
    QObject::connect(&form, &Form::edited, said, [&form, said] { said->setText(careText(careNow(form))); });
}

CareLimits readCare(Form& form) {
    for (const char* name :
         {"careWash", "careAgitation", "careTumble", "careIron", "careBleach", "careCleaning"})
        form.chosen(name);
    return form.isSound() ? careNow(form) : CareLimits{};
}

} // namespace holdfast::app
