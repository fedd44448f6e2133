#include "views/records/file_export.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileDialog>
#include <QSaveFile>

namespace rickyard::views {

namespace {

struct ExportWords {
    Q_DECLARE_TR_FUNCTIONS(FileExport)
};

} // namespace

std::optional<QString> writeFile(const QString &path, const QByteArray &bytes)
{
    QSaveFile file(path);
    if (file.open(QIODevice::WriteOnly) && file.write(bytes) == bytes.size() && file.commit())
        return std::nullopt;
    return ExportWords::tr("The file could not be written to %1: %2. Choose a folder that can be "
                           "written to.")
        .arg(QDir::toNativeSeparators(path), file.errorString());
}

void askAndExport(PageContext &context, QWidget *parent, const ExportQuestion &question,
                  const std::function<std::optional<QString>(const QString &path)> &write)
{
    const QString path =
        QFileDialog::getSaveFileName(parent, question.title, question.proposed, question.filter);
    if (path.isEmpty())
        return;
    if (const auto problem = write(path))
        context.refuse({{QString(), *problem}});
    else
        context.say(ExportWords::tr("Written to %1.").arg(QDir::toNativeSeparators(path)));
}

} // namespace rickyard::views
