// Writing a file that the person names: whole or not at all, and what became of it is said.
#pragma once

#include "views/page.h"

namespace rickyard::views {

// Gives the reason when it fails; the file is then as it was.
std::optional<QString> writeFile(const QString &path, const QByteArray &bytes);

struct ExportQuestion {
    QString title;
    QString proposed; // "fuel.csv"
    QString filter;
};
// Asks for the path, has it written and says so, or why not.
void askAndExport(PageContext &context, QWidget *parent, const ExportQuestion &question,
                  const std::function<std::optional<QString>(const QString &path)> &write);

} // namespace rickyard::views
