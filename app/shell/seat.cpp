// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/seat.h"

#include "app/desk/machine_settings.h"
#include "app/shell/places.h"

#include <QByteArray>
#include <QDataStream>

#include <optional>
#include <string_view>
#include <utility>

namespace holdfast::app {

namespace {

constexpr std::string_view kLightNote = "light";
constexpr std::string_view kPlaceNote = "last place";
constexpr std::string_view kFormsNote = "forms left";
constexpr std::string_view kEvening = "evening";

// A note that cannot be read is a note that was never kept.
std::optional<std::string> noteOf(db::Shop& shop, std::string_view key) {
    auto found = shop.read([&](db::Connection&) { return shop.note(key); });
    return found.ok() ? std::move(found).value() : std::nullopt;
}

} // namespace

Light keptLight(db::Shop& shop) {
    return noteOf(shop, kLightNote) == kEvening ? Light::Evening : Light::Day;
}

void keepLight(db::Shop& shop, Light light) {
    if (light == Light::Evening)
        shop.keepNote(kLightNote, kEvening);
    else
        shop.dropNote(kLightNote);
}

void handOnChoices(db::Shop& shop) {
    const std::pair<std::string_view, const QString&> choices[] = {
        {"printer for labels", kLabelPrinterSetting},
        {"printer for sheets", kSheetPrinterSetting},
        {"loudness", kLoudnessSetting}};
    for (const auto& [note, setting] : choices) {
        const auto chosen = noteOf(shop, note);
        if (!chosen)
            continue;
        if (machineSetting(setting).isEmpty())
            keepMachineSetting(setting, QString::fromStdString(*chosen));
        shop.dropNote(note);
    }
}

const BuiltPlace& keptPlace(db::Shop& shop) {
    if (const auto code = noteOf(shop, kPlaceNote))
        if (const BuiltPlace* place = builtPlace(QString::fromStdString(*code)))
            return *place;
    return builtPlaces().front();
}

void keepPlace(db::Shop& shop, const BuiltPlace& place) {
    shop.keepNote(kPlaceNote, place.code);
}

void handOnForms(db::Shop& shop, const SlipEdge::Left& forms) {
    if (forms.isEmpty()) {
        shop.dropNote(kFormsNote);
        return;
    }
    QByteArray bytes;
    QDataStream stream(&bytes, QIODevice::WriteOnly);
    stream << forms;
    shop.keepNote(kFormsNote, bytes.toBase64().toStdString());
}

SlipEdge::Left takeForms(db::Shop& shop) {
    SlipEdge::Left forms;
    const auto note = noteOf(shop, kFormsNote);
    if (!note)
        return forms;
    shop.dropNote(kFormsNote);
    const QByteArray bytes = QByteArray::fromBase64(QByteArray::fromStdString(*note));
    QDataStream stream(bytes);
    stream >> forms;
    return stream.status() == QDataStream::Ok ? forms : SlipEdge::Left{};
}

} // namespace holdfast::app
