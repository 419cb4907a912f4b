using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Laydown.Store.Migrations
{
    /// <inheritdoc />
    public partial class ProofLinks : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "ProofLinks",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    ItemId = table.Column<string>(type: "TEXT", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ProofLinks", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "ProofAnswers",
                columns: table => new
                {
                    Number = table.Column<long>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    LinkId = table.Column<string>(type: "TEXT", nullable: false),
                    ItemId = table.Column<string>(type: "TEXT", nullable: false),
                    AtSeconds = table.Column<long>(type: "INTEGER", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false),
                    Version = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ProofAnswers", x => x.Number);
                    table.ForeignKey(
                        name: "FK_ProofAnswers_ProofLinks_LinkId",
                        column: x => x.LinkId,
                        principalTable: "ProofLinks",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "IX_ProofAnswers_Id",
                table: "ProofAnswers",
                column: "Id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ProofAnswers_ItemId",
                table: "ProofAnswers",
                column: "ItemId");

            migrationBuilder.CreateIndex(
                name: "IX_ProofAnswers_LinkId_AtSeconds",
                table: "ProofAnswers",
                columns: new[] { "LinkId", "AtSeconds" });

            migrationBuilder.CreateIndex(
                name: "IX_ProofLinks_ItemId",
                table: "ProofLinks",
                column: "ItemId");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "ProofAnswers");

            migrationBuilder.DropTable(
                name: "ProofLinks");
        }
    }
}
