#include "app/desk/use_by_words.h"

#include "app/desk/formats.h"

#include <QCoreApplication>

namespace holdfast::app {

QString useByInFull(const RollCondition& condition) {
    const QString day = date(*condition.useBy);
    if (condition.useByRange)
        return QCoreApplication::translate("UseBy", "%1 (estimate %2)")
            .arg(day, words(spokenSpan(*condition.useByRange)));
    return condition.useByIsEstimate ? QCoreApplication::translate("UseBy", "%1 (estimate)").arg(day) : day;
}

} // namespace holdfast::app
