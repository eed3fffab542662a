// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/local_currency.h"

#include "app/desk/formats.h"
#include "core/trade/currencies.h"

#include <QLocale>

namespace holdfast::app {

namespace {

constexpr qsizetype kLongestSign = 5;

QString signIn(const QLocale& locale) {
    return locale.currencySymbol(QLocale::CurrencySymbol);
}

// The sign that most places write, of which this computer's own comes first.
QString signOf(const QString& code) {
    const auto isOf = [&](const QLocale& locale) {
        return locale.currencySymbol(QLocale::CurrencyIsoCode) == code;
    };
    if (isOf(QLocale::system()))
        return signIn(QLocale::system());
    QString shortest = code;
    for (const QLocale& locale :
         QLocale::matchingLocales(QLocale::AnyLanguage, QLocale::AnyScript, QLocale::AnyTerritory))
        if (isOf(locale) && !signIn(locale).isEmpty() && signIn(locale).size() < shortest.size())
            shortest = signIn(locale);
    return shortest;
}

} // namespace

QString localCurrencyCode() {
    const QString code = QLocale::system().currencySymbol(QLocale::CurrencyIsoCode);
    return code.isEmpty() ? words(Currency{}.code) : code;
}

Currency currencyOfCode(const QString& typed) {
    const QString code = typed.trimmed().toUpper();
    const QString sign = signOf(code).left(kLongestSign);
    return {plain(code), sign.isEmpty() ? plain(code) : plain(sign), currencyExponent(plain(code))};
}

} // namespace holdfast::app
