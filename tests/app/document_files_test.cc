// Finding documents on the disk.
#include "tracker/app/document_files.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>

#include "schema/error.h"

namespace rangebook {
namespace {

namespace fs = std::filesystem;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::ThrowsMessage;

class DocumentFilesTest : public testing::Test {
 protected:
  DocumentFilesTest() {
    write("saved/Coat.html", "<html>");
    write("saved/Coat_files/ad.html", "<html>");
    write("saved/Coat_files/x.js", "x");
    write("saved/look.png", "x");
    write("saved/.hidden.csv", "x");
    write("saved/more/b.mhtml", "MIME-Version: 1.0\n");
    write("saved/a.csv", "name\n");
  }
  ~DocumentFilesTest() override {
    std::error_code ignored;
    fs::remove_all(root_, ignored);
  }
  void write(const std::string& name, const std::string& text) const {
    fs::create_directories((root_ / name).parent_path());
    std::ofstream(root_ / name) << text;
  }
  std::string at(const std::string& name) const { return (root_ / name).string(); }
  std::vector<std::string> names(const std::vector<std::string>& paths) {
    auto found = find_documents(paths);
    notes_ = found.notes;
    std::vector<std::string> out;
    for (const auto& file : found.files) out.push_back(file.name);
    return out;
  }

  fs::path root_ =
      fs::temp_directory_path() / ("rangebook_documents_" + std::to_string(::getpid()));
  std::vector<std::string> notes_;
};

TEST_F(DocumentFilesTest, AFolderGivesItsDocumentsInOrder) {
  EXPECT_THAT(names({at("saved")}), ElementsAre("Coat.html", "a.csv", "more/b.mhtml"));
  EXPECT_THAT(notes_,
              ElementsAre("Left aside in " + at("saved") +
                          ": 2 parts of 1 saved page (pictures, scripts, styles, frames) and 1 "
                          "file that is no document."));
}

TEST_F(DocumentFilesTest, APageIsReadOnceHoweverOftenItIsNamed) {
  EXPECT_THAT(names({at("saved/Coat.html"), at("saved/./Coat.html"), at("saved/Coat_files/")}),
              ElementsAre("Coat.html"));
  EXPECT_THAT(notes_, ElementsAre("Left aside: " + at("saved/Coat_files/") +
                                  ", a part of the saved page " + at("saved/Coat.html") + "."));
  EXPECT_THAT(names({at("saved/Coat.html"), at("saved/Coat_files/ad.html")}),
              ElementsAre("Coat.html"));
  EXPECT_THAT(names({at("saved/more/b.mhtml"), at("saved/more")}), ElementsAre("b.mhtml"));
  EXPECT_THAT(notes_, IsEmpty());
}

TEST_F(DocumentFilesTest, OnlyPartsAreSaidToBeThat) {
  EXPECT_THAT([&] { names({at("saved/Coat_files")}); },
              ThrowsMessage<Error>(HasSubstr("is a part of the saved page")));
}

TEST_F(DocumentFilesTest, AFolderOfThatNameWithoutAPageIsAFolder) {
  fs::remove(root_ / "saved/Coat.html");
  EXPECT_THAT(names({at("saved/Coat_files")}), ElementsAre("ad.html"));
}

TEST_F(DocumentFilesTest, FormsByKindThenName) {
  EXPECT_EQ(form_of("a.mhtml", DocumentKind::mail), DocumentForm::mhtml);
  EXPECT_EQ(form_of("a.mht", DocumentKind::text), DocumentForm::mhtml);
  EXPECT_EQ(form_of("a.html", DocumentKind::mail), DocumentForm::mhtml);
  EXPECT_EQ(form_of("a.mht", DocumentKind::page), DocumentForm::page);
  EXPECT_EQ(form_of("a.html", DocumentKind::text), DocumentForm::page);
}

TEST_F(DocumentFilesTest, WhatIsNotThereIsAnError) {
  EXPECT_THROW(names({at("none.csv")}), Error);
  fs::create_directories(root_ / "empty");
  EXPECT_THROW(names({at("empty")}), Error);
}

}  // namespace
}  // namespace rangebook
