// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/window_language.h"

#include "app/desk/english_forms.h"
#include "app/desk/window_values.h"

#include <QCoreApplication>
#include <QLocale>

#include <algorithm>
#include <limits>
#include <string_view>
#include <utility>

namespace holdfast::app {

namespace {

// Nothing where no translation has it.
std::optional<QString> translated(const std::string& english, std::optional<std::int64_t> count) {
    const int number =
        count ? static_cast<int>(std::min<std::int64_t>(*count, std::numeric_limits<int>::max())) : -1;
    const QString found = qtTrId(english.c_str(), number);
    return found == QString::fromStdString(english) ? std::nullopt : std::optional{found};
}

// lupdate names a class without its namespace where that is written "namespace holdfast::app"; moc names it
// in whole.
class WindowTranslation : public QTranslator {
public:
    void setFiles(std::vector<const QTranslator*> files) { m_files = std::move(files); }

    bool isEmpty() const override { return m_files.empty(); }
    QString translate(const char* context, const char* source, const char* remark, int count) const override {
        constexpr std::string_view kOurs = "holdfast::app::";
        for (const QTranslator* file : m_files) {
            QString found = file->translate(context, source, remark, count);
            if (found.isNull() && context != nullptr && std::string_view{context}.starts_with(kOurs))
                found = file->translate(context + kOurs.size(), source, remark, count);
            if (!found.isNull())
                return found;
        }
        return {};
    }

private:
    std::vector<const QTranslator*> m_files;
};

QString code() {
    //: Not to be translated: the language of this translation, as "de" or "pt_BR".
    return QCoreApplication::translate("WindowLanguage", "en");
}

bool isEnglish() {
    const QLocale::Language language = QLocale().language();
    return language == QLocale::English || language == QLocale::C;
}

} // namespace

void setWindowLanguage(std::vector<const QTranslator*> files) {
    static EnglishForms english;
    static WindowTranslation translated;
    QCoreApplication::removeTranslator(&english);
    QCoreApplication::removeTranslator(&translated);
    translated.setFiles(std::move(files));
    // The one installed last is asked first.
    QCoreApplication::installTranslator(&english);
    if (!translated.isEmpty())
        QCoreApplication::installTranslator(&translated);
    QLocale locale{code()};
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    QLocale::setDefault(locale);
}

std::string WindowLanguage::pattern(std::string_view english, std::optional<std::int64_t> count) const {
    const auto found = translated(std::string{english}, count);
    return found ? found->toStdString() : Language::pattern(english, count);
}

// English is written by core, as in reports and in the history.
std::string WindowLanguage::written(const Value& value) const {
    return isEnglish() ? Language::written(value) : asLocaleWrites(value).toStdString();
}

std::string WindowLanguage::betweenParts() const {
    //: Between the parts of a list
    return QCoreApplication::translate("WindowLanguage", ", ").toStdString();
}

} // namespace holdfast::app
