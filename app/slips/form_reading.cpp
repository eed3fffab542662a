// SPDX-License-Identifier: GPL-3.0-or-later
// What is in the parts of a form, read with what is allowed there.
#include "app/desk/formats.h"
#include "app/slips/form.h"
#include "app/slips/form_row.h"
#include "app/widgets/choice.h"
#include "app/widgets/field.h"
#include "app/widgets/long_field.h"
#include "app/widgets/switch.h"
#include "core/trade/assertion.h"

#include <QCoreApplication>
#include <QRegularExpression>

namespace holdfast::app {

Result<Minutes> readClock(const QString& text, const QString& field) {
    static const QRegularExpression hourAndMinute(QStringLiteral(R"(^(\d{1,2})(?:[:.hH ]?(\d{2}))?$)"));
    const auto match = hourAndMinute.match(text.trimmed());
    const int hour = match.captured(1).toInt();
    const int minute = match.captured(2).toInt();
    const bool isMidnight = hour == 24 && minute == 0;
    if (!match.hasMatch() || minute > 59 || (hour > 23 && !isMidnight))
        return fieldError(
            plain(field),
            inWindow(QCoreApplication::translate("Form", "%1: a time such as 15:00.").arg(field)));
    return Minutes{hour * 60 + minute};
}

template <class T>
T Form::kept(std::string_view name, const Result<T>& read, T otherwise) {
    if (read.ok())
        return *read;
    setError(name, words(read.error().message));
    return otherwise;
}

QString Form::text(std::string_view name) const {
    const Part* part = find(name);
    HOLDFAST_ASSERT(part);
    if (const auto* longer = qobject_cast<LongField*>(part->control))
        return longer->text().trimmed();
    const auto* field = qobject_cast<Field*>(part->control);
    HOLDFAST_ASSERT(field && "only what is typed has a text");
    return field->text().trimmed();
}

std::int64_t Form::whole(std::string_view name, std::int64_t low, std::int64_t high) {
    return kept(name, readWhole(text(name), at(name).label, low, high), low);
}

double Form::decimal(std::string_view name, double low, double high) {
    return kept(name, readNumber(text(name), at(name).label, low, high), low);
}

std::optional<double> Form::optionalDecimal(std::string_view name, double low, double high) {
    if (text(name).isEmpty())
        return std::nullopt;
    return decimal(name, low, high);
}

std::optional<std::int64_t> Form::optionalWhole(std::string_view name, std::int64_t low, std::int64_t high) {
    if (text(name).isEmpty())
        return std::nullopt;
    return whole(name, low, high);
}

Money Form::money(std::string_view name, const Currency& currency) {
    return kept(name, readMoney(text(name), at(name).label, currency), Money{});
}

Millimetres Form::metres(std::string_view name, Millimetres low, Millimetres high) {
    return kept(name, readMetres(text(name), at(name).label, low, high), low);
}

LocalDate Form::date(std::string_view name, LocalDate today) {
    return kept(name, readDate(text(name), at(name).label, today), today);
}

std::optional<LocalDate> Form::optionalDate(std::string_view name, LocalDate today) {
    return kept(name, readOptionalDate(text(name), at(name).label, today), std::optional<LocalDate>{});
}

Minutes Form::clock(std::string_view name) {
    return kept(name, readClock(text(name), at(name).label), Minutes{0});
}

int Form::chosen(std::string_view name) {
    const Part& part = at(name);
    int place = -1;
    if (const auto* choice = qobject_cast<Choice*>(part.control))
        place = choice->chosenAt();
    else if (const auto* list = qobject_cast<PickList*>(part.control))
        place = list->currentIndex();
    if (place < 0) {
        setError(name, tr("%1: choose one.").arg(part.label));
        return 0;
    }
    return place;
}

bool Form::isOn(std::string_view name) const {
    const Part* part = find(name);
    HOLDFAST_ASSERT(part);
    return qobject_cast<Switch*>(part->control)->isChecked();
}

void Form::clearErrors() {
    for (Part& part : m_parts)
        part.row->setError({});
    m_isSound = true;
}

void Form::setError(std::string_view name, const QString& words) {
    at(name).row->setError(words);
    m_isSound = m_isSound && words.isEmpty();
}

bool Form::showError(const Error& error) {
    const Part* part = find(error.field);
    if (part == nullptr || part->row->isHidden())
        return false;
    setError(error.field, words(error.message));
    return true;
}

QString Form::errorAt(std::string_view name) const {
    const Part* part = find(name);
    return part == nullptr ? QString() : part->row->error();
}

} // namespace holdfast::app
